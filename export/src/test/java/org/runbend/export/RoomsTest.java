package org.runbend.export;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.GeneralCodingRules.ACCESS_STANDARD_STREAMS;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.ortools.linearsolver.MPSolver;
import com.google.ortools.linearsolver.MPVariable;
import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.runbend.optimizer.loop.search.LoopSolver;

/** The walls of the house: who may know whom, and what may not be anywhere. */
class RoomsTest {
    private static final String ROOT = "org.runbend.";

    private static final String VERIFY = ROOT + "optimizer.verify";

    /** Bytes of all rooms as they were compiled, without tests. */
    private static final JavaClasses OURS = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .withImportOption(place -> !place.contains("-tests.jar"))
            .importPackages("org.runbend");

    /**
     * What each package may know of ours. A package that is not in this table fails {@link #sawEveryPackage()}, so a new
     * one has to be given its place here.
     */
    private static final Map<String, List<String>> MAY_KNOW = Map.ofEntries(
            Map.entry("catalog.source", List.of()),
            Map.entry("catalog.product", List.of("catalog.source")),
            Map.entry("catalog.shelf", List.of("catalog.source", "catalog.product")),
            Map.entry("catalog.ledger", List.of()),
            Map.entry("catalog.ledger.sql", List.of("catalog.ledger")),
            Map.entry("optimizer.survey", List.of()),
            // what a job says of heat is told in heat's own records
            Map.entry(
                    "optimizer.job", List.of("catalog.product", "catalog.shelf", "catalog.source", "optimizer.heat..")),
            Map.entry(
                    "optimizer.job.read",
                    List.of(
                            "catalog.source",
                            "catalog.product",
                            "catalog.shelf",
                            "optimizer.survey",
                            "optimizer.job",
                            "optimizer.heat..")),
            Map.entry(
                    "optimizer.day",
                    List.of(
                            "optimizer.answer",
                            "optimizer.mip",
                            "optimizer.cutting",
                            "optimizer.cutting.patterns",
                            "optimizer.verify",
                            "optimizer.work")),
            Map.entry("optimizer.natives", List.of()),
            Map.entry("optimizer.work", List.of()),
            Map.entry("optimizer.answer", List.of()),
            Map.entry("optimizer.mip", List.of("optimizer.natives", "optimizer.work")),
            Map.entry("optimizer.lattice", List.of()),
            Map.entry("optimizer.loop", List.of("optimizer.lattice")),
            Map.entry(
                    "optimizer.loop.search",
                    List.of(
                            "optimizer.answer",
                            "optimizer.natives",
                            "optimizer.mip",
                            "optimizer.lattice",
                            "optimizer.loop",
                            "optimizer.work")),
            Map.entry("optimizer.cutting", List.of("optimizer.answer")),
            Map.entry("optimizer.cutting.patterns", List.of("optimizer.answer", "optimizer.mip", "optimizer.cutting")),
            Map.entry(
                    "optimizer.cutting.cover",
                    List.of("optimizer.answer", "optimizer.mip", "optimizer.cutting", "optimizer.work")),
            // how much room a bend needs is told by the bend itself
            Map.entry("optimizer.floor", List.of("optimizer.job", "optimizer.lattice", "optimizer.breakdown")),
            Map.entry(
                    "optimizer.division",
                    List.of("optimizer.answer", "optimizer.lattice", "optimizer.loop..", "optimizer.verify")),
            Map.entry(
                    "optimizer.bare",
                    List.of(
                            "catalog.product",
                            "catalog.source",
                            "optimizer.job",
                            "optimizer.lattice",
                            "optimizer.loop..",
                            "optimizer.floor")),
            Map.entry("optimizer.tape", List.of("optimizer.job", "optimizer.floor")),
            Map.entry("optimizer.packing", List.of("catalog.product")),
            Map.entry(
                    "optimizer.setout",
                    List.of("optimizer.job", "optimizer.floor", "optimizer.breakdown", "optimizer.tape")),
            Map.entry("optimizer.breakdown", List.of("catalog.product", "catalog.shelf", "optimizer.job")),
            Map.entry("optimizer.channel", List.of("optimizer.job", "optimizer.floor", "optimizer.breakdown")),
            Map.entry("optimizer.boards.nesting", List.of()),
            Map.entry(
                    "optimizer.boards",
                    List.of("optimizer.mip", "optimizer.job", "optimizer.breakdown", "optimizer.boards.nesting")),
            Map.entry(
                    "optimizer.guide",
                    List.of(
                            "catalog.product",
                            "catalog.source",
                            "optimizer.job",
                            "optimizer.breakdown",
                            "optimizer.channel")),
            Map.entry(
                    "optimizer.coils",
                    List.of(
                            "optimizer.answer",
                            "catalog.product",
                            "catalog.shelf",
                            "optimizer.cutting",
                            "optimizer.cutting.patterns",
                            "optimizer.job")),
            Map.entry(
                    "optimizer.plates",
                    List.of(
                            "optimizer.answer",
                            "catalog.product",
                            "catalog.shelf",
                            "optimizer.mip",
                            "optimizer.cutting",
                            "optimizer.cutting.cover",
                            "optimizer.job",
                            "optimizer.floor",
                            "optimizer.breakdown",
                            "optimizer.work")),
            Map.entry("optimizer.heat.quantity", List.of()),
            Map.entry("optimizer.heat.coolant", List.of("catalog.product", "optimizer.heat.quantity")),
            Map.entry(
                    "optimizer.heat.flow",
                    List.of("catalog.product", "optimizer.heat.quantity", "optimizer.heat.coolant")),
            Map.entry("optimizer.heat.output", List.of("optimizer.heat.quantity")),
            Map.entry("optimizer.heat.need", List.of("optimizer.heat.quantity")),
            Map.entry("optimizer.heat.field", List.of("optimizer.heat.quantity", "optimizer.heat.output")),
            Map.entry(
                    "optimizer.heat.circuit",
                    List.of("optimizer.heat.quantity", "optimizer.heat.coolant", "optimizer.heat.output")),
            Map.entry(
                    "optimizer.heat.limits",
                    List.of(
                            "catalog.product",
                            "optimizer.heat.quantity",
                            "optimizer.heat.coolant",
                            "optimizer.heat.output")),
            // plans, loops and floors stay outside: heat knows lengths, areas and products
            Map.entry("optimizer.heat", List.of("catalog.product", "optimizer.heat..")),
            Map.entry(
                    "optimizer.plan",
                    List.of(
                            "catalog..",
                            "optimizer.job",
                            "optimizer.floor",
                            "optimizer.loop",
                            "optimizer.boards",
                            "optimizer.bare",
                            "optimizer.change",
                            "optimizer.breakdown",
                            "optimizer.channel",
                            "optimizer.coils",
                            "optimizer.plates",
                            "optimizer.tape",
                            "optimizer.setout",
                            "optimizer.packing",
                            "optimizer.heat..")),
            // what was cut before a floor changed
            Map.entry(
                    "optimizer.change",
                    List.of("catalog.shelf", "optimizer.job", "optimizer.breakdown", "optimizer.boards")),
            // held to records by {@link #verifiersUseRecordsAlone()}
            Map.entry(
                    "optimizer.verify",
                    List.of(
                            "catalog..",
                            "optimizer.job",
                            "optimizer.lattice",
                            "optimizer.loop",
                            "optimizer.cutting",
                            "optimizer.boards..",
                            "optimizer.breakdown",
                            "optimizer.channel",
                            "optimizer.coils",
                            "optimizer.guide",
                            "optimizer.plates",
                            "optimizer.heat.limits",
                            "optimizer.plan",
                            "optimizer.quote")),
            Map.entry(
                    "optimizer.laying",
                    List.of(
                            "optimizer.answer",
                            "catalog..",
                            "optimizer.job",
                            "optimizer.floor",
                            "optimizer.lattice",
                            "optimizer.loop..",
                            "optimizer.division",
                            "optimizer.bare",
                            "optimizer.change",
                            "optimizer.breakdown",
                            "optimizer.verify",
                            "optimizer.work")),
            Map.entry("optimizer.planning", List.of("catalog..", "optimizer..")),
            Map.entry(
                    "optimizer.choice",
                    List.of(
                            "catalog.product",
                            "catalog.shelf",
                            "optimizer.job",
                            "optimizer.lattice",
                            "optimizer.breakdown",
                            "optimizer.coils",
                            "optimizer.plates",
                            "optimizer.laying",
                            "optimizer.plan",
                            "optimizer.planning",
                            "optimizer.work")),
            // prices of a finished plan; which kits would do is a small integer program
            Map.entry(
                    "optimizer.quote",
                    List.of(
                            "catalog.product",
                            "catalog.source",
                            "optimizer.job",
                            "optimizer.floor",
                            "optimizer.coils",
                            "optimizer.plates",
                            "optimizer.heat..",
                            "optimizer.plan",
                            "optimizer.mip")),
            // plans come from whoever asks for a range
            Map.entry(
                    "optimizer.estimate",
                    List.of(
                            "catalog.product",
                            "catalog.source",
                            "optimizer.job",
                            "optimizer.job.read",
                            "optimizer.plan",
                            "optimizer.quote",
                            "optimizer.work")),
            Map.entry(
                    "optimizer.service",
                    List.of(
                            "catalog.product",
                            "optimizer.quote",
                            "optimizer.estimate",
                            "optimizer.job",
                            "optimizer.change",
                            "optimizer.plan",
                            "optimizer.planning",
                            "optimizer.choice",
                            "optimizer.work")),
            Map.entry("export.drawing", List.of()),
            Map.entry("export.dxf", List.of("export.drawing")),
            Map.entry("export.dxf.read", List.of("export.dxf")),
            // what it drafts is held against the rules of job files
            Map.entry("export.outline", List.of("export.drawing", "export.dxf", "export.dxf.read", "optimizer.job..")),
            Map.entry("export.svg", List.of("export.drawing")),
            Map.entry("export.pdf", List.of("export.drawing")),
            Map.entry("export.data", List.of("catalog..", "optimizer..", "export.drawing")),
            Map.entry("export.drafting", List.of("catalog..", "optimizer..", "export.drawing", "export.data")),
            Map.entry(
                    "export.papers",
                    List.of("catalog..", "optimizer..", "export.drawing", "export.data", "export.pdf")),
            // a job is read with the shelf that its order may use
            Map.entry(
                    "export.stock",
                    List.of("catalog..", "optimizer.answer", "optimizer.cutting..", "optimizer.job", "export.data")),
            Map.entry(
                    "export.batch",
                    List.of(
                            "catalog..",
                            "optimizer..",
                            "export.data",
                            "export.dxf",
                            "export.folder",
                            "export.papers",
                            "export.pdf")),
            Map.entry("export.relay", List.of("catalog.ledger", "catalog.source", "optimizer.job..")),
            Map.entry("export.bench", List.of("catalog..", "optimizer..", "export..")),
            Map.entry("export.folder", List.of("catalog.source", "optimizer..", "export..")),
            Map.entry(
                    "export.page",
                    List.of(
                            "catalog..",
                            "optimizer..",
                            "export.drawing",
                            "export.drafting",
                            "export.dxf..",
                            "export.pdf",
                            "export.svg",
                            "export.data",
                            "export.outline",
                            "export.stock",
                            "export.folder")),
            Map.entry("export.cli", List.of("catalog..", "optimizer..", "export..")));

    /** The scan found each package of the table and no other, and as many classes as a house like this has. */
    @Test
    void sawEveryPackage() {
        TreeMap<String, Long> count = OURS.stream()
                .collect(Collectors.groupingBy(
                        c -> c.getPackageName().substring(ROOT.length()), TreeMap::new, Collectors.counting()));
        assertEquals(new TreeSet<>(MAY_KNOW.keySet()), count.navigableKeySet());
        assertTrue(count.values().stream().mapToLong(n -> n).sum() > 200, count::toString);
        count.forEach((name, n) -> assertTrue(n >= 2, name + " has " + n + " classes"));
    }

    @ParameterizedTest
    @CsvSource({
        "catalog.product.CatalogReader",
        "catalog.source.BadInput",
        "optimizer.job.read.JobReader",
        "optimizer.loop.search.LoopSolver",
        "optimizer.mip.IntegerSolver",
        "optimizer.mip.LinearSolver",
        "optimizer.planning.KitPlanner",
        "optimizer.service.PlanService",
        "export.dxf.DxfBackend",
        "export.pdf.PdfBackend",
        "export.cli.Runbend"
    })
    void sawTheClassesThatTheRulesAreAbout(String name) {
        assertTrue(OURS.contain(ROOT + name));
    }

    @Test
    void roomsAreKnownOneWay() {
        check(noClasses()
                .that()
                .resideInAPackage("org.runbend.catalog..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("org.runbend.optimizer..", "org.runbend.export.."));
        check(noClasses()
                .that()
                .resideInAPackage("org.runbend.optimizer..")
                .should()
                .dependOnClassesThat()
                .resideInAPackage("org.runbend.export.."));
    }

    @Test
    void packagesKnowWhatTheTableAllows() {
        MAY_KNOW.forEach((name, known) -> check(classes()
                .that()
                .resideInAPackage(ROOT + name)
                .should()
                .onlyDependOnClassesThat(not(resideInAPackage("org.runbend.."))
                        .or(resideInAnyPackage(Stream.concat(Stream.of(name), known.stream())
                                .map(p -> ROOT + p)
                                .toArray(String[]::new))))));
    }

    /** The writer of the format could be taken out and used for any drawing. */
    @Test
    void onlyTheBackendOfDxfKnowsTheDrawing() {
        check(noClasses()
                .that()
                .resideInAPackage("org.runbend.export.dxf")
                .and()
                .doNotHaveSimpleName("DxfBackend")
                .should()
                .dependOnClassesThat(resideInAPackage("org.runbend..")
                        .and(not(resideInAPackage("org.runbend.export.dxf")))
                        .and(describe("are more than how a number is written", c -> !c.getSimpleName()
                                .equals("Decimals")))));
    }

    @Test
    void packagesFormNoCycle() {
        check(slices().matching("org.runbend.(**)").should().beFreeOfCycles());
    }

    @Test
    void solverLibraryStaysInTheOptimizer() {
        check(noClasses()
                .that()
                .resideOutsideOfPackage("org.runbend.optimizer..")
                .should()
                .dependOnClassesThat(solverTypes()));
        check(classes()
                .that(describe("use the solver library", RoomsTest::usesSolver))
                .should()
                .resideInAnyPackage(
                        "org.runbend.optimizer.mip",
                        "org.runbend.optimizer.cutting.patterns",
                        "org.runbend.optimizer.loop.search",
                        "org.runbend.optimizer.natives"));
    }

    /** Native objects live and die in one call of one class: never kept, and handed on to private methods only. */
    @Test
    void solverTypesAreInNoFieldAndNoOpenSignature() {
        assertEquals(List.of(), fieldsOfType(OURS, solverTypes()));
        assertEquals(List.of(), signaturesWith(OURS, solverTypes()));
    }

    @Test
    void pdfLibraryStaysInItsPackage() {
        check(noClasses()
                .that()
                .resideOutsideOfPackage("org.runbend.export.pdf")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("org.apache.pdfbox..", "org.apache.fontbox.."));
        JavaClass backend = OURS.get(ROOT + "export.pdf.PdfBackend");
        assertTrue(backend.getDirectDependenciesFromSelf().stream()
                .anyMatch(d -> d.getTargetClass().getPackageName().startsWith("org.apache.pdfbox")));
    }

    /** What is on the shelf is no table: rows, drivers and their errors stay with the ledger's own line to its database. */
    @Test
    void databaseLibrariesStayInTheirClasses() {
        check(noClasses()
                .that(describe(
                        "are not the ledger's line to its database, or the relay's",
                        c -> !c.getName().startsWith(ROOT + "catalog.ledger.sql.Sql$")
                                && !c.getName().equals(ROOT + "catalog.ledger.sql.Sql")
                                && !c.getName().startsWith(ROOT + "export.relay.Relay")))
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("java.sql..", "javax.sql..", "org.sqlite..", "org.postgresql.."));
        check(noClasses()
                .that()
                .doNotHaveFullyQualifiedName(ROOT + "catalog.ledger.sql.Migrations")
                .should()
                .dependOnClassesThat()
                .resideInAPackage("org.flywaydb.."));
        assertEquals(
                List.of(),
                signaturesWith(OURS, resideInAnyPackage("java.sql..", "org.flywaydb..")).stream()
                        .filter(s -> !s.contains("Sql$Current") && !s.contains("Relay$RowReader"))
                        .toList());
    }

    @Test
    void onlyTheCommandLineSpeaks() {
        check(noClasses()
                .that()
                .resideOutsideOfPackage("org.runbend.export.cli")
                .should(ACCESS_STANDARD_STREAMS));
    }

    /** Plans are made through the service alone, and no thread comes from the pool that all of Java shares. */
    @Test
    void oneDoorToPlanning() {
        check(noClasses()
                .that()
                .resideOutsideOfPackages(
                        "org.runbend.optimizer.planning",
                        "org.runbend.optimizer.choice",
                        "org.runbend.optimizer.service")
                .should()
                .dependOnClassesThat()
                .haveFullyQualifiedName("org.runbend.optimizer.planning.KitPlanner"));
        check(noClasses()
                .that()
                .resideOutsideOfPackages("org.runbend.optimizer.choice", "org.runbend.optimizer.service")
                .should()
                .dependOnClassesThat()
                .haveFullyQualifiedName("org.runbend.optimizer.choice.ChoicePlanner"));
        check(noClasses().should().callMethod(Collection.class, "parallelStream"));
    }

    @Test
    void nothingStaticChanges() {
        check(fields().that().areStatic().should().beFinal());
        List<String> holders = fieldsOfType(OURS, describe("holders", RoomsTest::isHolder));
        assertEquals(List.of(), holders);
    }

    @Test
    void noPackageForEverything() {
        check(noClasses().should().resideInAnyPackage("..util..", "..utils..", "..common..", "..helper..", "..misc.."));
    }

    /** A verifier sees the question and the answer, records both, and the graph of the question; nothing that answers. */
    @Test
    void verifiersUseRecordsAlone() {
        check(usesRecordsAlone(resideInAPackage(VERIFY)));
        assertTrue(OURS.stream()
                        .filter(c -> c.getPackageName().equals(VERIFY))
                        .filter(c -> c.getSimpleName().endsWith("Verifier"))
                        .count()
                >= 8);
        check(noClasses().that().resideOutsideOfPackage(VERIFY).should().haveSimpleNameEndingWith("Verifier"));
    }

    private static ArchRule usesRecordsAlone(DescribedPredicate<JavaClass> who) {
        return classes()
                .that(who)
                .should()
                .onlyDependOnClassesThat(not(resideInAPackage("org.runbend.."))
                        .or(resideInAnyPackage(VERIFY, "org.runbend.catalog.."))
                        .or(describe(
                                "are records",
                                c -> c.getBaseComponentType().isRecord()
                                        || c.getBaseComponentType().isEnum()
                                        || c.getBaseComponentType().isInterface()
                                        || c.getName().equals(ROOT + "optimizer.lattice.LatticeGraph"))));
    }

    /** Halls: only the search for loops may be one, and it says how to walk through it. */
    @Test
    void noPackageIsAHall() {
        assertEquals(Set.of("optimizer.loop.search"), halls(40).keySet());
    }

    private static Map<String, Long> halls(int most) {
        TreeMap<String, Long> count = OURS.stream()
                .filter(c -> !c.isNestedClass() && !c.isAnonymousClass())
                .filter(c -> !c.getSimpleName().equals("package-info"))
                .collect(Collectors.groupingBy(
                        c -> c.getPackageName().substring(ROOT.length()), TreeMap::new, Collectors.counting()));
        count.values().removeIf(n -> n <= most);
        return count;
    }

    /** Guard: the rules can fail. Each is held against a class that breaks it on purpose. */
    @Test
    void rulesCanFail() {
        JavaClasses bad = new ClassFileImporter().importClasses(Bad.class);
        ArchRule fixed = fields().that().areStatic().should().beFinal();
        ArchRule silent = noClasses().should(ACCESS_STANDARD_STREAMS);
        assertThrows(AssertionError.class, () -> fixed.check(bad));
        assertThrows(AssertionError.class, () -> silent.check(bad));
        assertThrows(AssertionError.class, () -> usesRecordsAlone(describe("all", c -> true))
                .check(bad));
        assertEquals(1, fieldsOfType(bad, solverTypes()).size());
        assertEquals(2, signaturesWith(bad, solverTypes()).size());
        assertEquals(
                1, fieldsOfType(bad, describe("holders", RoomsTest::isHolder)).size());
    }

    /** What must not be. */
    static final class Bad {
        static MPSolver kept;
        static final AtomicLong COUNT = new AtomicLong();

        private Bad() {}

        static List<MPVariable> handedOut() {
            System.out.println(COUNT);
            return List.of();
        }

        static LoopSolver asked() {
            return new LoopSolver();
        }

        static String takenIn(MPSolver solver) {
            return solver.toString();
        }
    }

    private static List<String> fieldsOfType(JavaClasses classes, DescribedPredicate<JavaClass> type) {
        return classes.stream()
                .flatMap(c -> c.getFields().stream())
                .filter(f -> f.getAllInvolvedRawTypes().stream().anyMatch(type))
                .map(JavaField::getFullName)
                .sorted()
                .toList();
    }

    /** Methods and constructors others can call that take or give the type, inside a generic type too. */
    private static List<String> signaturesWith(JavaClasses classes, DescribedPredicate<JavaClass> type) {
        return classes.stream()
                .flatMap(c -> c.getCodeUnits().stream())
                .filter(m -> !m.getModifiers().contains(JavaModifier.PRIVATE))
                .filter(m -> m.getAllInvolvedRawTypes().stream().anyMatch(type))
                .map(JavaCodeUnit::getFullName)
                .sorted()
                .toList();
    }

    private static void check(ArchRule rule) {
        // A rule may find nothing to forbid once a package loses its last class of a kind; the guards above count.
        rule.allowEmptyShould(true).check(OURS);
    }

    private static DescribedPredicate<JavaClass> solverTypes() {
        return resideInAPackage("com.google.ortools..");
    }

    private static boolean usesSolver(JavaClass type) {
        return type.getDirectDependenciesFromSelf().stream()
                .anyMatch(d -> solverTypes().test(d.getTargetClass()));
    }

    private static boolean isHolder(JavaClass type) {
        return type.isAssignableTo(AtomicReference.class)
                || type.isAssignableTo(AtomicLong.class)
                || type.isAssignableTo(AtomicInteger.class)
                || type.isAssignableTo(ThreadLocal.class);
    }
}
