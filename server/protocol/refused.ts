/** A client that refuses what it is asked by the way, or goes meanwhile, goes without it. */
export function refused(): undefined {}
