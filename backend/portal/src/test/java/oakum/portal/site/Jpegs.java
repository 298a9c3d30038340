package oakum.portal.site;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;

/** Pictures for tests, with what cameras write beside them. */
final class Jpegs {
    static final String DEVICE = "PhoneOfTheSiteLead";

    /** The latitude 47 degrees 12 minutes 30 seconds as three rational numbers. */
    static final byte[] GPS_TAG = ByteBuffer.allocate(24)
            .putInt(47)
            .putInt(1)
            .putInt(12)
            .putInt(1)
            .putInt(30)
            .putInt(1)
            .array();

    private Jpegs() {}

    /** Dark on the left, light on the right. */
    static BufferedImage halves(int width, int height) {
        BufferedImage picture = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D pen = picture.createGraphics();
        pen.setColor(Color.WHITE);
        pen.fillRect(0, 0, width, height);
        pen.setColor(Color.BLACK);
        pen.fillRect(0, 0, width / 2, height);
        pen.dispose();
        return picture;
    }

    static byte[] encode(BufferedImage picture) {
        try {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            ImageIO.write(picture, "jpeg", out);
            return out.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A JPEG with the block that cameras write: device, orientation and where it was taken. */
    static byte[] withLocation(BufferedImage picture, int orientation) {
        byte[] jpeg = encode(picture);
        byte[] exif = exif(orientation);
        ByteBuffer out = ByteBuffer.allocate(jpeg.length + exif.length + 4);
        out.put(jpeg, 0, 2);
        out.putShort((short) 0xFFE1).putShort((short) (exif.length + 2)).put(exif);
        out.put(jpeg, 2, jpeg.length - 2);
        return out.array();
    }

    /** TIFF 6.0, big endian: device (0x010F), orientation (0x0112), pointer to the place (0x8825). */
    private static byte[] exif(int orientation) {
        byte[] device = (DEVICE + "\0").getBytes(StandardCharsets.US_ASCII);
        int entries = 8 + 2 + 3 * 12 + 4;
        int gps = entries + device.length + device.length % 2;
        int latitude = gps + 2 + 2 * 12 + 4;
        ByteBuffer tiff = ByteBuffer.allocate(latitude + GPS_TAG.length);
        tiff.put("MM".getBytes(StandardCharsets.US_ASCII)).putShort((short) 42).putInt(8);
        tiff.putShort((short) 3);
        tiff.putShort((short) 0x010F).putShort((short) 2).putInt(device.length).putInt(entries);
        tiff.putShort((short) 0x0112)
                .putShort((short) 3)
                .putInt(1)
                .putShort((short) orientation)
                .putShort((short) 0);
        tiff.putShort((short) 0x8825).putShort((short) 4).putInt(1).putInt(gps);
        tiff.putInt(0).put(device);
        tiff.position(gps);
        tiff.putShort((short) 2);
        tiff.putShort((short) 1).putShort((short) 2).putInt(2).put(new byte[] {'N', 0, 0, 0});
        tiff.putShort((short) 2).putShort((short) 5).putInt(3).putInt(latitude);
        tiff.putInt(0).put(GPS_TAG);
        return ByteBuffer.allocate(6 + tiff.capacity())
                .put("Exif\0\0".getBytes(StandardCharsets.US_ASCII))
                .put(tiff.array())
                .array();
    }

    /** The head of a PNG that says it is this large, with almost nothing behind it. */
    static byte[] pngThatClaims(int width, int height) {
        ByteBuffer head = ByteBuffer.allocate(17)
                .put("IHDR".getBytes(StandardCharsets.US_ASCII))
                .putInt(width)
                .putInt(height)
                .put(new byte[] {8, 2, 0, 0, 0});
        CRC32 sum = new CRC32();
        sum.update(head.array());
        return ByteBuffer.allocate(8 + 4 + 17 + 4 + 12)
                .put(new byte[] {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'})
                .putInt(13)
                .put(head.array())
                .putInt((int) sum.getValue())
                .putInt(0)
                .put("IDAT".getBytes(StandardCharsets.US_ASCII))
                .putInt(0x35AF061E)
                .array();
    }
}
