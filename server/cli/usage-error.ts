/** Something the person at the command line got wrong; its message is all they need. */
export class UsageError extends Error {}
