package oakum.portal.http;

import java.io.EOFException;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.PushbackInputStream;
import java.io.Reader;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;

/** The body of a request as text: unpacked, limited, strictly decoded. */
public final class TextBody {
    private static final int BUFFER = 1 << 16;

    private TextBody() {}

    /** More came than is taken in one request. */
    private static final class TooLarge extends IOException {
        private static final long serialVersionUID = 1L;

        TooLarge(long limit) {
            super("more than " + limit + " bytes");
        }
    }

    /**
     * Opens a body; gzip is known by its first two bytes.
     *
     * @param limitBytes of the unpacked text, so that a small packed file cannot unpack without end
     */
    public static Reader open(InputStream sent, long limitBytes, Charset charset) throws IOException {
        PushbackInputStream plain = new PushbackInputStream(sent, 2);
        boolean packed = startsWith(plain, 0x1f, 0x8b);
        InputStream unpacked = packed ? new GZIPInputStream(plain, BUFFER) : plain;
        PushbackInputStream limited = new PushbackInputStream(new Limited(unpacked, limitBytes), 3);
        startsWithByteOrderMark(limited);
        return new InputStreamReader(
                limited,
                charset.newDecoder()
                        .onMalformedInput(CodingErrorAction.REPORT)
                        .onUnmappableCharacter(CodingErrorAction.REPORT));
    }

    /** The refusal that an error while reading stands for, or null where it is another kind of trouble. */
    public static @Nullable Problem problem(@Nullable Throwable error, long limitBytes) {
        for (Throwable e = error; e != null; e = e.getCause()) {
            if (e instanceof TooLarge) {
                return tooLarge(limitBytes);
            }
            if (e instanceof EOFException) {
                return new Problem(
                        HttpStatus.BAD_REQUEST,
                        "body-cut-short",
                        "The body ends before its end. Nothing of it was kept; send it again.");
            }
            if (e instanceof ZipException) {
                return new Problem(
                        HttpStatus.BAD_REQUEST,
                        "body-malformed",
                        "The gzip body is damaged. Nothing of it was kept; pack the file again.");
            }
            if (e instanceof CharacterCodingException) {
                return new Problem(
                        HttpStatus.BAD_REQUEST,
                        "body-malformed",
                        "The text is not in the character set it should be in. Send it as UTF-8, or name its own: Content-Type: text/csv;charset=ISO-8859-1.");
            }
        }
        return null;
    }

    public static Problem tooLarge(long limitBytes) {
        return new Problem(
                        HttpStatus.CONTENT_TOO_LARGE,
                        "body-too-large",
                        "One request takes at most " + limitBytes
                                + " bytes of text, unpacked. Nothing of it was kept; split the file and send the pieces one after the other.")
                .with("limitBytes", limitBytes);
    }

    private static boolean startsWith(PushbackInputStream in, int first, int second) throws IOException {
        byte[] start = in.readNBytes(2);
        in.unread(start);
        return start.length == 2 && (start[0] & 0xff) == first && (start[1] & 0xff) == second;
    }

    private static void startsWithByteOrderMark(PushbackInputStream in) throws IOException {
        byte[] start = in.readNBytes(3);
        boolean mark = start.length == 3
                && (start[0] & 0xff) == 0xef
                && (start[1] & 0xff) == 0xbb
                && (start[2] & 0xff) == 0xbf;
        if (!mark) {
            in.unread(start);
        }
    }

    /** Counts, and stops at the limit. */
    private static final class Limited extends FilterInputStream {
        private final long limit;
        private long count;

        Limited(InputStream in, long limit) {
            super(in);
            this.limit = limit;
        }

        @Override
        public int read() throws IOException {
            int b = super.read();
            if (b >= 0) {
                add(1);
            }
            return b;
        }

        @Override
        public int read(byte[] into, int offset, int length) throws IOException {
            int read = super.read(into, offset, length);
            if (read > 0) {
                add(read);
            }
            return read;
        }

        private void add(int read) throws IOException {
            count += read;
            if (count > limit) {
                throw new TooLarge(limit);
            }
        }
    }
}
