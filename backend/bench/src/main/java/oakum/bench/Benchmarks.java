package oakum.bench;

import java.util.List;

/** Runs the benchmarks named on the command line ({@code wall}, {@code sweep}, {@code memory}, {@code air}), or all. */
public final class Benchmarks {
    private Benchmarks() {}

    public static void main(String[] names) throws Exception {
        List<String> chosen = names.length == 0 ? List.of("wall", "sweep", "memory", "air") : List.of(names);
        int rounds = Integer.getInteger("rounds", 5);
        System.out.println(System.getProperty("java.vm.name") + " " + System.getProperty("java.version") + ", "
                + Runtime.getRuntime().availableProcessors() + " processors");
        for (String name : chosen) {
            switch (name) {
                case "wall" -> WallYear.go(rounds);
                case "sweep" -> WallSweep.go();
                case "memory" -> WallSweep.memory();
                case "air" -> MoistAirStates.go(rounds);
                default -> System.out.println("There is no benchmark \"" + name + "\": wall, sweep, memory, air.");
            }
        }
    }
}
