/**
 * The content security policy of a page for the bench: its own style and the pictures that it holds itself. Nothing
 * can run on it, nothing is fetched, and nothing is sent.
 */
export const benchPagePolicy =
    "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'";

/** Comes before anything that it has to hold for. */
export const benchPagePolicyTag = `<meta http-equiv="Content-Security-Policy" content="${benchPagePolicy}">`;
