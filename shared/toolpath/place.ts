/** A place on the blank: mm from its top left corner, y downwards. */
export interface BlankPoint {
    readonly x: number;
    readonly y: number;
}
