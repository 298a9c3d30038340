package oakum.physics.filtration;

import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import oakum.physics.numerics.LineFit;
import oakum.physics.numerics.Roots;

/** What pressure a fan makes at what flow, and where it settles against a resistance that rises with the flow. */
public sealed interface FanCurve {
    /** Flow and pressure at which fan and resistance agree. */
    record OperatingPoint(double flow, double pressure) {
        /**
         * Electrical power.
         *
         * @param efficiencyFraction electrical to air, above 0
         * @return watts where flow is m³/s and pressure Pa
         */
        public double power(double efficiencyFraction) {
            return flow * pressure / efficiencyFraction;
        }
    }

    /** One point of a fan table. */
    record Point(double flow, double pressure) {}

    /**
     * Where the fan settles.
     *
     * @param resistance pressure over flow, rising, 0 at no flow
     * @return empty where that lies outside what is known of the fan
     */
    Optional<OperatingPoint> against(DoubleUnaryOperator resistance);

    /**
     * A fan without control of its speed: a table, straight between its points, never beyond them.
     *
     * @param points at least two, in rising flow
     */
    record Table(List<Point> points) implements FanCurve {
        public Table {
            points = List.copyOf(points);
            for (int i = 1; i < points.size(); i++) {
                if (!(points.get(i).flow() > points.get(i - 1).flow())) {
                    throw new IllegalArgumentException("a fan table needs rising flows");
                }
            }
        }

        @Override
        public Optional<OperatingPoint> against(DoubleUnaryOperator resistance) {
            // the rightmost crossing is the stable one
            for (int i = points.size() - 1; i > 0; i--) {
                Point low = points.get(i - 1);
                Point high = points.get(i);
                double slope = (high.pressure() - low.pressure()) / (high.flow() - low.flow());
                DoubleUnaryOperator surplus =
                        q -> low.pressure() + slope * (q - low.flow()) - resistance.applyAsDouble(q);
                if (surplus.applyAsDouble(low.flow()) >= 0 && surplus.applyAsDouble(high.flow()) <= 0) {
                    double flow = Roots.bracketed(surplus, low.flow(), high.flow(), 1e-12 * high.flow());
                    return Optional.of(new OperatingPoint(flow, resistance.applyAsDouble(flow)));
                }
            }
            return Optional.empty();
        }
    }

    /**
     * A motor held at constant torque: pressure falls in a straight line with the flow.
     *
     * @param shutoff pressure at no flow, above 0
     * @param fall loss of pressure per unit of flow, above 0
     */
    record ConstantTorque(double shutoff, double fall) implements FanCurve {
        /** The straight line through points of the maker's table, by least squares. */
        public static ConstantTorque through(List<Point> points) {
            LineFit line = LineFit.ordinary(
                    points.stream().mapToDouble(Point::flow).toArray(),
                    points.stream().mapToDouble(Point::pressure).toArray());
            return new ConstantTorque(line.intercept(), -line.slope());
        }

        @Override
        public Optional<OperatingPoint> against(DoubleUnaryOperator resistance) {
            double most = shutoff / fall;
            double flow = Roots.bracketed(q -> shutoff - fall * q - resistance.applyAsDouble(q), 0, most, 1e-12 * most);
            return Optional.of(new OperatingPoint(flow, resistance.applyAsDouble(flow)));
        }
    }

    /**
     * A motor that holds its flow until the pressure reaches a limit, then holds that pressure.
     *
     * @param flow held, above 0
     * @param pressureLimit above 0
     */
    record ConstantFlow(double flow, double pressureLimit) implements FanCurve {
        @Override
        public Optional<OperatingPoint> against(DoubleUnaryOperator resistance) {
            double needed = resistance.applyAsDouble(flow);
            if (needed <= pressureLimit) {
                return Optional.of(new OperatingPoint(flow, needed));
            }
            double reached = Roots.bracketed(q -> resistance.applyAsDouble(q) - pressureLimit, 0, flow, 1e-12 * flow);
            return Optional.of(new OperatingPoint(reached, pressureLimit));
        }
    }
}
