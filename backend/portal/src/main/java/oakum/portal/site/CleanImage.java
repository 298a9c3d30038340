package oakum.portal.site;

import com.drew.imaging.ImageMetadataReader;
import com.drew.imaging.ImageProcessingException;
import com.drew.metadata.exif.ExifDirectoryBase;
import com.drew.metadata.exif.ExifIFD0Directory;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Iterator;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.Semaphore;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import net.coobird.thumbnailator.Thumbnails;
import net.coobird.thumbnailator.util.exif.ExifFilterUtils;
import net.coobird.thumbnailator.util.exif.Orientation;
import oakum.portal.http.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;

/**
 * A photo as the portal keeps it: told by its bytes, drawn anew the right way up, so that nothing but the picture is left
 * of what the camera wrote; no place, no device, no hidden second file.
 */
final class CleanImage {
    static final int LONGEST_PX = 4096;
    static final int THUMBNAIL_PX = 480;

    /** Beyond this nobody's camera sends; a small file could be made to unfold into all the memory there is. */
    private static final long MOST_PIXELS = 120_000_000;

    private static final Set<String> FORMATS = Set.of("jpeg", "png", "webp");

    /** A picture takes some hundred megabytes while it is drawn: few at a time. */
    private static final Semaphore DRAWING = new Semaphore(2);

    private final byte[] jpeg;
    private final byte[] thumbnail;
    private final int widthPx;
    private final int heightPx;

    private CleanImage(BufferedImage picture) throws IOException {
        this.jpeg = jpeg(picture, 0.88f);
        this.thumbnail = jpeg(within(picture, THUMBNAIL_PX), 0.8f);
        this.widthPx = picture.getWidth();
        this.heightPx = picture.getHeight();
    }

    /** The picture, at most {@value #LONGEST_PX} px long. */
    byte[] jpeg() {
        return jpeg;
    }

    /** The same, at most {@value #THUMBNAIL_PX} px long. */
    byte[] thumbnail() {
        return thumbnail;
    }

    int widthPx() {
        return widthPx;
    }

    int heightPx() {
        return heightPx;
    }

    /**
     * Cleans what was sent.
     *
     * @param sent the bytes, whatever name and type came with them
     * @throws Problem 422 {@code not-an-image} where they are no JPEG, PNG or (where the reader is there) WebP;
     *     {@code image-too-large} for more than 120 million pixels
     */
    static CleanImage of(byte[] sent) {
        DRAWING.acquireUninterruptibly();
        try (ImageInputStream in = ImageIO.createImageInputStream(new ByteArrayInputStream(sent))) {
            Iterator<ImageReader> readers = ImageIO.getImageReaders(in);
            if (!readers.hasNext()) {
                throw notAnImage(null);
            }
            ImageReader reader = readers.next();
            try {
                return of(sent, reader, in);
            } finally {
                reader.dispose();
            }
        } catch (IOException | RuntimeException e) {
            if (e instanceof Problem problem) {
                throw problem;
            }
            // broken and hostile files make readers fail in many ways; all of them mean the same to the sender
            throw notAnImage(e);
        } finally {
            DRAWING.release();
        }
    }

    private static CleanImage of(byte[] sent, ImageReader reader, ImageInputStream in) throws IOException {
        if (!FORMATS.contains(reader.getFormatName().toLowerCase(Locale.ROOT))) {
            throw notAnImage(null);
        }
        reader.setInput(in, true, false);
        int width = reader.getWidth(0);
        int height = reader.getHeight(0);
        if ((long) width * height > MOST_PIXELS) {
            throw new Problem(
                    HttpStatus.UNPROCESSABLE_CONTENT,
                    "image-too-large",
                    "The picture has " + width + " × " + height + " pixels; at most 120 million are taken.");
        }
        ImageReadParam every = reader.getDefaultReadParam();
        int step = Math.max(1, Math.max(width, height) / LONGEST_PX);
        every.setSourceSubsampling(step, step, 0, 0);
        BufferedImage upright = upright(reader.read(0, every), sent);
        return new CleanImage(within(onWhite(upright), LONGEST_PX));
    }

    private static BufferedImage upright(BufferedImage picture, byte[] sent) throws IOException {
        Orientation orientation = Orientation.typeOf(orientation(sent));
        return orientation == Orientation.TOP_LEFT
                ? picture
                : ExifFilterUtils.getFilterForOrientation(orientation).apply(picture);
    }

    /** Which way up the camera was held, 1 to 8; 1 where it did not say. */
    private static int orientation(byte[] sent) throws IOException {
        try {
            ExifIFD0Directory camera = ImageMetadataReader.readMetadata(new ByteArrayInputStream(sent))
                    .getFirstDirectoryOfType(ExifIFD0Directory.class);
            Integer said = camera == null ? null : camera.getInteger(ExifDirectoryBase.TAG_ORIENTATION);
            return said == null || said < 1 || said > 8 ? 1 : said;
        } catch (ImageProcessingException e) {
            // the picture itself can be read: what the camera wrote beside it is not needed
            return 1;
        }
    }

    private static BufferedImage onWhite(BufferedImage picture) {
        BufferedImage plain = new BufferedImage(picture.getWidth(), picture.getHeight(), BufferedImage.TYPE_INT_RGB);
        Graphics2D pen = plain.createGraphics();
        try {
            pen.setColor(Color.WHITE);
            pen.fillRect(0, 0, plain.getWidth(), plain.getHeight());
            pen.drawImage(picture, 0, 0, null);
        } finally {
            pen.dispose();
        }
        return plain;
    }

    private static BufferedImage within(BufferedImage picture, int longestPx) throws IOException {
        return Math.max(picture.getWidth(), picture.getHeight()) <= longestPx
                ? picture
                : Thumbnails.of(picture).size(longestPx, longestPx).asBufferedImage();
    }

    private static byte[] jpeg(BufferedImage picture, float quality) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Thumbnails.of(picture)
                .scale(1)
                .outputFormat("jpeg")
                .outputQuality(quality)
                .toOutputStream(out);
        return out.toByteArray();
    }

    private static Problem notAnImage(@Nullable Exception cause) {
        Problem problem = Problem.unprocessable(
                "not-an-image",
                "file",
                "Not kept: the file is no JPEG or PNG picture that can be read. Send the photo.");
        if (cause != null) {
            problem.initCause(cause);
        }
        return problem;
    }
}
