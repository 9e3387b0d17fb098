/**
 * How much of a file is read before it is called too large. Far above any drawing that could be
 * burnt, and low enough that a hostile file costs seconds and megabytes, not the machine.
 */
export const limits = {
    /** UTF-16 units of the file. */
    text: 60_000_000,
    /** Elements nested in one another; also through `use`. */
    depth: 200,
    /** Elements in the file. */
    elements: 400_000,
    /** Elements drawn, each as often as a `use` draws it. */
    drawn: 100_000,
    /** Corners of all copies of what patterns repeat. */
    patterned: 1_000_000,
    /** Masks drawn, each once for every place it is used at. */
    masks: 300,
    /** Corners after curves are flattened and strokes cut into dashes. */
    corners: 2_000_000,
    /** Characters that entities may add. */
    expansion: 1_000_000,
    /** Characters in all style sheets. */
    sheet: 2_000_000,
    /** Steps from element to element that matching selectors may take. */
    matching: 20_000_000,
    /** Places told for one message; the rest is counted. */
    places: 10,
    /** Problems of all kinds. */
    problems: 200,
} as const;
