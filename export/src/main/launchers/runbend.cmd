@echo off
rem Runs the jar that lies beside this file.
setlocal
set "java=java"
if defined JAVA_HOME set "java=%JAVA_HOME%\bin\java"
"%java%" -jar "%~dp0runbend.jar" %*
exit /b %ERRORLEVEL%
