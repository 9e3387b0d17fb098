/** Copies of one placement: more than these are refused, and no bed holds them. */
export const mostCopies = 10_000;
