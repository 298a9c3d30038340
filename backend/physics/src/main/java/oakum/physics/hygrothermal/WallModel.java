package oakum.physics.hygrothermal;

import java.util.ArrayList;
import java.util.List;

/** A wall divided into cells: everything about it that does not change during a run. */
final class WallModel {
    /** Cells of one material in a row. */
    record Run(int layer, LayerProperties properties, int from, int to) {}

    /** A membrane between two cells (the first one's index), or at a face. */
    record PlacedMembrane(int interfaceIndex, MembraneLayer membrane) {}

    /** A share of a source that lands in one cell. */
    record Deposit(MoistureSource.Kind kind, int cell, double share) {}

    final Wall wall;
    final int count;
    final double[] width;
    final double[] half;
    final int[] layerOfCell;

    /** First cell of each layer, and one beyond its last; equal for a membrane. */
    final int[] layerFrom;

    final int[] layerTo;

    final List<Run> runs;

    /** Constant vapour resistance between a cell and the next, m² s Pa/kg. */
    final double[] membraneResistance;

    /** Membranes between cells whose resistance follows humidity. */
    final PlacedMembrane[] variableMembranes;

    /** 1/distance of two neighbours of one material that carries liquid, else 0. */
    final double[] liquidConductance;

    /** First cells of pairs of different materials between which liquid passes. */
    final int[] liquidJoints;

    final List<MembraneLayer> insideCoatings;
    final List<MembraneLayer> outsideCoatings;
    final int[] ventilatedCells;
    final Deposit[] deposits;

    WallModel(Wall wall, GridRule rule) {
        this(wall, gridOf(wall, rule));
    }

    /**
     * A wall on a grid of one's own.
     *
     * @param wall checked before
     * @param widths one array of cell widths per layer, from inside to outside; empty for a membrane
     */
    WallModel(Wall wall, List<double[]> widths) {
        this.wall = wall;
        int layers = wall.layers().size();
        layerFrom = new int[layers];
        layerTo = new int[layers];
        int n = 0;
        for (int l = 0; l < layers; l++) {
            layerFrom[l] = n;
            n += widths.get(l).length;
            layerTo[l] = n;
        }
        count = n;
        width = new double[n];
        half = new double[n];
        layerOfCell = new int[n];
        runs = new ArrayList<>();
        membraneResistance = new double[n];
        liquidConductance = new double[n];
        insideCoatings = new ArrayList<>();
        outsideCoatings = new ArrayList<>();
        List<PlacedMembrane> variable = new ArrayList<>();
        List<Integer> ventilated = new ArrayList<>();
        boolean[] sealed = new boolean[n];
        for (int l = 0; l < layers; l++) {
            WallLayer layer = wall.layers().get(l);
            for (int i = layerFrom[l]; i < layerTo[l]; i++) {
                width[i] = widths.get(l)[i - layerFrom[l]];
                half[i] = 0.5 * width[i];
                layerOfCell[i] = l;
            }
            if (layer instanceof SolidLayer solid) {
                runs.add(new Run(l, solid.properties(), layerFrom[l], layerTo[l]));
            } else if (layer instanceof AirLayer air) {
                runs.add(new Run(l, new AirProperties(air), layerFrom[l], layerTo[l]));
                if (air.ventilated()) {
                    ventilated.add(layerFrom[l]);
                }
            } else if (layer instanceof MembraneLayer membrane) {
                place(membrane, layerFrom[l] - 1, variable, sealed);
            }
        }
        variableMembranes = variable.toArray(PlacedMembrane[]::new);
        ventilatedCells = ventilated.stream().mapToInt(Integer::intValue).toArray();
        liquidJoints = connectLiquid(sealed);
        deposits = depositsOf(wall.sources());
    }

    private static List<double[]> gridOf(Wall wall, GridRule rule) {
        List<double[]> widths = new ArrayList<>();
        for (WallLayer layer : wall.layers()) {
            if (layer instanceof SolidLayer solid) {
                widths.add(rule.cells(solid.thicknessM()));
            } else if (layer instanceof AirLayer air) {
                widths.add(new double[] {air.thicknessM()});
            } else {
                widths.add(new double[0]);
            }
        }
        return widths;
    }

    private void place(MembraneLayer membrane, int before, List<PlacedMembrane> variable, boolean[] sealed) {
        if (before < 0) {
            insideCoatings.add(membrane);
        } else if (before == count - 1) {
            outsideCoatings.add(membrane);
        } else {
            sealed[before] = true;
            if (membrane.points().size() > 1) {
                variable.add(new PlacedMembrane(before, membrane));
            } else {
                membraneResistance[before] += resistance(membrane.sdM(0.5));
            }
        }
    }

    private int[] connectLiquid(boolean[] sealed) {
        List<Integer> joints = new ArrayList<>();
        for (int r = 0; r < runs.size(); r++) {
            Run run = runs.get(r);
            if (!run.properties().carriesLiquid()) {
                continue;
            }
            for (int i = run.from(); i < run.to() - 1; i++) {
                liquidConductance[i] = 1 / (half[i] + half[i + 1]);
            }
            if (r + 1 < runs.size() && runs.get(r + 1).properties().carriesLiquid() && !sealed[run.to() - 1]) {
                joints.add(run.to() - 1);
            }
        }
        return joints.stream().mapToInt(Integer::intValue).toArray();
    }

    private Deposit[] depositsOf(List<MoistureSource> sources) {
        List<Deposit> found = new ArrayList<>();
        for (MoistureSource source : sources) {
            boolean inner = source.side() == MoistureSource.Side.INNER;
            int step = inner ? 1 : -1;
            int cell = inner ? layerFrom[source.layer()] : layerTo[source.layer()] - 1;
            double left = source.depthM();
            while (left > 1e-12 && cell >= layerFrom[source.layer()] && cell < layerTo[source.layer()]) {
                double taken = Math.min(left, width[cell]);
                found.add(new Deposit(source.kind(), cell, source.share() * taken / source.depthM()));
                left -= taken;
                cell += step;
            }
        }
        return found.toArray(Deposit[]::new);
    }

    /** Vapour resistance of an s_d, m² s Pa/kg. */
    static double resistance(double sdM) {
        return sdM / Constants.STILL_AIR_PERMEABILITY_KG_PER_M_S_PA;
    }

    Run runOf(int cell) {
        for (Run run : runs) {
            if (cell < run.to()) {
                return run;
            }
        }
        throw new IndexOutOfBoundsException(cell);
    }

    /** Depth of a cell's centre from the inner face of its layer, m. */
    double depthInLayerM(int cell) {
        double depth = half[cell];
        for (int i = layerFrom[layerOfCell[cell]]; i < cell; i++) {
            depth += width[i];
        }
        return depth;
    }
}
