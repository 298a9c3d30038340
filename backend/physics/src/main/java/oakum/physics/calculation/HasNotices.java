package oakum.physics.calculation;

import java.util.List;

/** An output record that says something beside its numbers; the component is called {@code notices}. */
public interface HasNotices {
    List<Notice> notices();
}
