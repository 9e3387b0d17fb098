/** A place on the blank: mm from its top left corner, y downwards. */
export interface Place {
    readonly x: number;
    readonly y: number;
}
