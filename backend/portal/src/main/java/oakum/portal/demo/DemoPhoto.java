package oakum.portal.demo;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.imageio.ImageIO;

/** A drawn stand-in for a photo of the site: a stud bay and the location card, and it says that it is drawn. */
final class DemoPhoto {
    private static final int WIDTH = 960;
    private static final int HEIGHT = 720;

    private DemoPhoto() {}

    static byte[] of(String card, String seen) {
        BufferedImage picture = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = picture.createGraphics();
        try {
            g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
            g.setColor(new Color(0xe9edea));
            g.fillRect(0, 0, WIDTH, HEIGHT);
            g.setColor(new Color(0x8a7a5f));
            for (int x = 60; x < WIDTH; x += 280) {
                g.fillRect(x, 0, 44, HEIGHT);
            }
            g.setColor(new Color(0x17202a));
            g.setStroke(new BasicStroke(3));
            g.setColor(Color.WHITE);
            g.fillRect(WIDTH / 2 - 10, HEIGHT - 300, WIDTH / 2 - 40, 240);
            g.setColor(new Color(0x17202a));
            g.drawRect(WIDTH / 2 - 10, HEIGHT - 300, WIDTH / 2 - 40, 240);
            g.setFont(new Font(Font.SANS_SERIF, Font.BOLD, 30));
            g.drawString(card, WIDTH / 2 + 14, HEIGHT - 240);
            g.setFont(new Font(Font.SANS_SERIF, Font.PLAIN, 22));
            g.drawString(seen, WIDTH / 2 + 14, HEIGHT - 190);
            g.drawString("drawn for the demo, no photo", WIDTH / 2 + 14, HEIGHT - 90);
        } finally {
            g.dispose();
        }
        try {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            ImageIO.write(picture, "jpeg", out);
            return out.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
