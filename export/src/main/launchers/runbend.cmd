@echo off
rem Runs the jar that lies beside this file.
setlocal
set "java=java"
if defined JAVA_HOME set "java=%JAVA_HOME%\bin\java"
rem The quick compiler alone: most code here runs for a second or two.
"%java%" -XX:TieredStopAtLevel=1 -jar "%~dp0runbend.jar" %*
exit /b %ERRORLEVEL%
