package oakum.physics.hygrothermal;

/** One layer of a wall, in the order from inside to outside. */
public sealed interface WallLayer permits SolidLayer, AirLayer, MembraneLayer {
    /** As people call it; stands in every refusal and result about the layer. */
    String name();
}
