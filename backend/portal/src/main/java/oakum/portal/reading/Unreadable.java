package oakum.portal.reading;

/** A field that cannot be taken; the message is the reason that the sender reads. */
final class Unreadable extends Exception {
    private static final long serialVersionUID = 1L;

    Unreadable(String reason) {
        // a bad file throws one of these for every line: no stack is walked
        super(reason, null, false, false);
    }

    String reason() {
        return String.valueOf(getMessage());
    }
}
