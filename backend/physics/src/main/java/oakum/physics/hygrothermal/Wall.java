package oakum.physics.hygrothermal;

import java.util.List;

/**
 * A wall, roof or floor cut once, from inside to outside.
 *
 * @param layers from inside to outside, at least one of them solid
 * @param inside the indoor face
 * @param outside the outdoor face
 * @param planes where to report temperature and humidity
 * @param sources moisture that lands inside the wall
 */
public record Wall(
        List<WallLayer> layers, Face inside, Face outside, List<Plane> planes, List<MoistureSource> sources) {
    public Wall {
        layers = List.copyOf(layers);
        planes = List.copyOf(planes);
        sources = List.copyOf(sources);
    }
}
