package oakum.portal.reading;

/** What ingestion must know of a sensor. */
record KnownSensor(int id, String key, ObservedProperty property) {}
