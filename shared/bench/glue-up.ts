/** Laying and pressing one small piece, s, and spreading glue on a hand's breadth, s for each mm2. @commonPractice A small shop's own estimate. */
const laying = 5;
const spreading = 2 / 100;

/** Time from the first glue to the press for one inlay, s. */
export function glueUpTime(area: number): number {
    return laying + spreading * Math.max(0, area);
}

/** The area that can be glued in a time, mm2. */
export function gluedIn(time: number): number {
    return Math.max(0, time - laying) / spreading;
}
