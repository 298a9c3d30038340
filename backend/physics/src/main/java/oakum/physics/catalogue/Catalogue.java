package oakum.physics.catalogue;

import java.util.List;
import java.util.Optional;
import oakum.physics.airtightness.InfiltrationEstimate;
import oakum.physics.airtightness.TightnessTest;
import oakum.physics.calculation.Calculation;
import oakum.physics.controllayer.AssemblyFindings;
import oakum.physics.controllayer.ControlLayers;
import oakum.physics.envelope.AssemblyResistance;
import oakum.physics.envelope.CondensationBlock;
import oakum.physics.envelope.CondensationMonthly;
import oakum.physics.envelope.DewPointOfWall;
import oakum.physics.envelope.HeatLossCoefficient;
import oakum.physics.envelope.SurfaceFactor;
import oakum.physics.exposure.AirLeakageWetting;
import oakum.physics.exposure.DrivingRain;
import oakum.physics.exposure.IndoorClimateClass;
import oakum.physics.exposure.SunOnSurface;
import oakum.physics.fastening.CladdingWind;
import oakum.physics.fastening.FastenerCorrosion;
import oakum.physics.fastening.FastenerWithdrawal;
import oakum.physics.fastening.FurringScrews;
import oakum.physics.filtration.CoilState;
import oakum.physics.filtration.FilterCurve;
import oakum.physics.filtration.FilterSizing;
import oakum.physics.filtration.MervGrade;
import oakum.physics.filtration.ParticleBalance;
import oakum.physics.housepressure.DoorForce;
import oakum.physics.housepressure.DryerDuct;
import oakum.physics.housepressure.HousePressure;
import oakum.physics.housepressure.MakeUpHeater;
import oakum.physics.housepressure.MakeUpTable;
import oakum.physics.housepressure.MakeUpTrigger;
import oakum.physics.hygrothermal.HumidityCeiling;
import oakum.physics.hygrothermal.WallMoisture;
import oakum.physics.moistair.AirAtAltitude;
import oakum.physics.moistair.MoistAirState;
import oakum.physics.mould.DecayOfWood;
import oakum.physics.mould.MouldIndex;
import oakum.physics.mould.WoodMoistureCriteria;
import oakum.physics.rainscreen.OpenJoints;
import oakum.physics.rainscreen.RainScreenCavity;
import oakum.physics.rainscreen.RainScreenPlan;
import oakum.physics.trend.FilterLoadTrend;
import oakum.physics.wood.FloorMovement;
import oakum.physics.wood.FramingShrinkage;
import oakum.physics.wood.WoodState;

/** Every calculation, in printed order. */
public final class Catalogue {
    /** Add a calculation here and nowhere else. */
    public static final List<Calculation<?, ?>> ALL = List.of(
            MoistAirState.CALCULATION,
            AirAtAltitude.CALCULATION,
            SunOnSurface.CALCULATION,
            DrivingRain.CALCULATION,
            IndoorClimateClass.CALCULATION,
            AirLeakageWetting.CALCULATION,
            TightnessTest.CALCULATION,
            InfiltrationEstimate.CALCULATION,
            HousePressure.CALCULATION,
            MakeUpHeater.CALCULATION,
            MakeUpTrigger.CALCULATION,
            MakeUpTable.CALCULATION,
            DryerDuct.CALCULATION,
            DoorForce.CALCULATION,
            AssemblyResistance.CALCULATION,
            HeatLossCoefficient.CALCULATION,
            SurfaceFactor.CALCULATION,
            DewPointOfWall.CALCULATION,
            CondensationMonthly.CALCULATION,
            CondensationBlock.CALCULATION,
            WallMoisture.CALCULATION,
            HumidityCeiling.CALCULATION,
            ControlLayers.CALCULATION,
            AssemblyFindings.CALCULATION,
            FilterSizing.CALCULATION,
            FilterCurve.CALCULATION,
            MervGrade.CALCULATION,
            ParticleBalance.CALCULATION,
            CoilState.CALCULATION,
            FilterLoadTrend.CALCULATION,
            MouldIndex.CALCULATION,
            WoodMoistureCriteria.CALCULATION,
            DecayOfWood.CALCULATION,
            WoodState.CALCULATION,
            FloorMovement.CALCULATION,
            FramingShrinkage.CALCULATION,
            RainScreenCavity.CALCULATION,
            RainScreenPlan.CALCULATION,
            OpenJoints.CALCULATION,
            FastenerWithdrawal.CALCULATION,
            CladdingWind.CALCULATION,
            FastenerCorrosion.CALCULATION,
            FurringScrews.CALCULATION);

    private Catalogue() {}

    public static Optional<Calculation<?, ?>> find(String id) {
        return ALL.stream().filter(calculation -> calculation.id().equals(id)).findFirst();
    }
}
