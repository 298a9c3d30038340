package oakum.portal.site;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import javax.imageio.ImageIO;
import oakum.portal.http.Problem;
import org.junit.jupiter.api.Test;

class CleanImageTest {
    @Test
    void the_place_and_the_device_are_gone() {
        byte[] sent = Jpegs.withLocation(Jpegs.halves(64, 40), 1);
        assertThat(text(sent)).contains("Exif", Jpegs.DEVICE);

        CleanImage clean = CleanImage.of(sent);

        assertThat(text(clean.jpeg())).doesNotContain("Exif").doesNotContain(Jpegs.DEVICE);
        assertThat(text(clean.thumbnail())).doesNotContain("Exif").doesNotContain(Jpegs.DEVICE);
        assertThat(indexOf(clean.jpeg(), Jpegs.GPS_TAG)).isNegative();
        assertThat(indexOf(sent, Jpegs.GPS_TAG)).isNotNegative();
    }

    @Test
    void what_the_camera_said_about_up_is_honoured() throws IOException {
        // orientation 6: the first row of pixels is the right-hand side of the scene
        CleanImage clean = CleanImage.of(Jpegs.withLocation(Jpegs.halves(64, 40), 6));

        BufferedImage picture = ImageIO.read(new ByteArrayInputStream(clean.jpeg()));
        assertThat(picture.getWidth()).isEqualTo(40);
        assertThat(picture.getHeight()).isEqualTo(64);
        // the dark left half of what was stored is the upper half of the scene
        assertThat(new Color(picture.getRGB(20, 8)).getRed()).isLessThan(60);
        assertThat(new Color(picture.getRGB(20, 56)).getRed()).isGreaterThan(200);
    }

    @Test
    void a_large_picture_becomes_smaller_and_keeps_its_shape() {
        CleanImage clean = CleanImage.of(Jpegs.encode(Jpegs.halves(5000, 2500)));
        assertThat(clean.widthPx()).isEqualTo(CleanImage.LONGEST_PX);
        assertThat(clean.heightPx()).isEqualTo(CleanImage.LONGEST_PX / 2);
    }

    @Test
    void a_page_that_calls_itself_a_picture_is_refused() {
        byte[] page = "<html><script>alert(1)</script></html>".getBytes(StandardCharsets.UTF_8);
        assertRefused(page, "not-an-image");
        assertRefused("<svg xmlns='http://www.w3.org/2000/svg'/>".getBytes(StandardCharsets.UTF_8), "not-an-image");
        assertRefused(new byte[0], "not-an-image");
    }

    @Test
    void half_a_picture_is_refused() {
        byte[] whole = Jpegs.encode(Jpegs.halves(640, 400));
        assertRefused(java.util.Arrays.copyOf(whole, 200), "not-an-image");
    }

    @Test
    void a_small_file_that_unfolds_into_all_memory_is_refused() {
        assertRefused(Jpegs.pngThatClaims(60_000, 60_000), "image-too-large");
    }

    @Test
    void a_page_hidden_behind_a_picture_does_not_survive() {
        byte[] picture = Jpegs.encode(Jpegs.halves(64, 40));
        byte[] tail = "<script>alert(1)</script>".getBytes(StandardCharsets.UTF_8);
        byte[] both = java.util.Arrays.copyOf(picture, picture.length + tail.length);
        System.arraycopy(tail, 0, both, picture.length, tail.length);
        assertThat(text(CleanImage.of(both).jpeg())).doesNotContain("script");
    }

    private static void assertRefused(byte[] sent, String code) {
        assertThatThrownBy(() -> CleanImage.of(sent))
                .isInstanceOfSatisfying(
                        Problem.class, problem -> assertThat(problem.code()).isEqualTo(code));
    }

    private static String text(byte[] bytes) {
        return new String(bytes, StandardCharsets.ISO_8859_1);
    }

    private static int indexOf(byte[] bytes, byte[] part) {
        return text(bytes).indexOf(text(part));
    }
}
