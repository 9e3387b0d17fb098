/** A file that cannot be read as a recipe file; the message is for a person. */
export class CannotOpen extends Error {}
