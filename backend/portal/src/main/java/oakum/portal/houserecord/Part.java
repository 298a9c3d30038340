package oakum.portal.houserecord;

/** A typed piece of the house record, kept in revisions. */
public sealed interface Part
        permits HouseMeasures, EnclosurePart, AirPart, HeatPart, MoisturePart, WaterPart, SensorsPart {}
