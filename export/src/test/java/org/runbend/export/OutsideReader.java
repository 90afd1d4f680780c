package org.runbend.export;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;

/**
 * Programs of others that read our files. A test that needs one which is not installed is skipped with a word, and fails
 * where the environment says {@code CI=true}.
 */
public final class OutsideReader {
    /** Far over what any of them needs; only a hung program meets it. */
    private static final int PATIENCE_SECONDS = 120;

    private OutsideReader() {}

    /** Runs a program found on the PATH and gives back what it printed; a code other than 0 fails the test. */
    public static String run(String tool, String... arguments) {
        Path program = onPath(tool);
        need(program != null, tool + " is not installed");
        List<String> command = new ArrayList<>(List.of(program.toString()));
        command.addAll(List.of(arguments));
        Result result = start(command);
        assertTrue(result.code() == 0, () -> command + " ended with " + result.code() + ":\n" + result.output());
        return result.output();
    }

    /** Compiles a C++ program that lies among the test resources, and links it with libraries. */
    static Path compiled(Path folder, String source, String... libraries) throws IOException {
        Path code = resource(folder, source);
        Path program = folder.resolve(source.replace(".cpp", ""));
        for (String library : libraries) {
            need(
                    Files.isDirectory(Path.of("/usr/include", library)),
                    "the headers of " + library + " are not installed");
        }
        List<String> command = new ArrayList<>(List.of("-o", program.toString(), code.toString()));
        for (String library : libraries) {
            command.add("-l" + library);
        }
        run("g++", command.toArray(String[]::new));
        return program;
    }

    /** What a program printed that was {@link #compiled}; a code other than 0 fails the test. */
    static String runCompiled(Path program, String... arguments) {
        return run(program.toString(), arguments);
    }

    /** What a script for Node printed that uses a package of npm; its arguments are told before the others. */
    static String node(Path script, String npmPackage, String... arguments) {
        Path folder = npmFolder(npmPackage);
        List<String> all = new ArrayList<>(List.of(script.toString(), folder.toString(), npmPackage));
        all.addAll(List.of(arguments));
        return run("node", all.toArray(String[]::new));
    }

    /** The folder in whose {@code node_modules} a package of npm lies. */
    public static Path npmFolder(String npmPackage) {
        String told = System.getenv("RUNBEND_NPM");
        Path folder =
                told == null ? Path.of(System.getProperty("user.home"), ".cache", "runbend", "npm") : Path.of(told);
        need(
                Files.isDirectory(folder.resolve("node_modules").resolve(npmPackage)),
                "npm's " + npmPackage + " is not in " + folder + " (RUNBEND_NPM names another folder)");
        return folder;
    }

    /** A program found on the PATH; without it the test is skipped. */
    public static Path program(String tool) {
        Path program = onPath(tool);
        need(program != null, tool + " is not installed");
        return program;
    }

    /** A file from beside this class, laid into a folder. */
    static Path resource(Path folder, String name) throws IOException {
        Path copy = folder.resolve(name);
        try (InputStream in = OutsideReader.class.getResourceAsStream(name)) {
            return Files.write(copy, in.readAllBytes());
        }
    }

    /** What ezdxf found in a DXF file: lines of facts, see {@code read_dxf.py} among the test resources. */
    public static List<String> ezdxf(Path dxf) throws IOException {
        Path script = Files.createTempFile("read", ".py");
        try (InputStream in = OutsideReader.class.getResourceAsStream("read_dxf.py")) {
            Files.write(script, in.readAllBytes());
        }
        try {
            return python(script, List.of("ezdxf"), dxf.toString()).lines().toList();
        } finally {
            Files.delete(script);
        }
    }

    /** What a Python script printed that needs some modules; a code other than 0 fails the test. */
    public static String python(Path script, List<String> modules, String... arguments) {
        // The modules are those of the system's own Python, which need not be the first on the PATH.
        Path system = Path.of("/usr/bin/python3");
        Path python = Files.isExecutable(system) ? system : onPath("python3");
        need(python != null, "python3 is not installed");
        String imports = "import " + String.join(", ", modules);
        need(start(List.of(python.toString(), "-c", imports)).code() == 0, "python3 cannot " + imports);
        List<String> command = new ArrayList<>(List.of(python.toString(), script.toString()));
        command.addAll(List.of(arguments));
        Result result = start(command);
        assertTrue(result.code() == 0, () -> command + " ended with " + result.code() + ":\n" + result.output());
        return result.output();
    }

    private static void need(boolean there, String word) {
        if (!there && "true".equals(System.getenv("CI"))) {
            fail(word + ", but CI must have it");
        }
        assumeTrue(there, word);
    }

    private static Path onPath(String tool) {
        for (String folder : List.of(System.getenv().getOrDefault("PATH", "").split(":", -1))) {
            Path program = Path.of(folder).resolve(tool);
            if (Files.isExecutable(program)) {
                return program;
            }
        }
        return null;
    }

    private static Result start(List<String> command) {
        try {
            ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
            builder.environment().put("QT_QPA_PLATFORM", "offscreen");
            builder.environment().put("LC_ALL", "C.UTF-8");
            Process process = builder.start();
            process.getOutputStream().close();
            String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            if (!process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
                process.destroyForcibly();
                throw new IllegalStateException(String.format(Locale.ROOT, "%s hung", command));
            }
            return new Result(process.exitValue(), output);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    private record Result(int code, String output) {}
}
