package oakum.portal.people;

/** A token just made. The secret is shown this once and kept by nobody but its owner. */
record MadeToken(TokenView token, String secret) {}
