import * as v from 'valibot';

/** The small shapes that messages are made of, for both ends of the protocol and for what the editor keeps. */

/** An address with its scheme, such as `file:///shop/heron-tray.kerf`; of nothing else can a file be read. */
export const address = v.pipe(v.string(), v.regex(/^[a-z][a-z\d+.-]*:(?!\/\/\/\/)/i));

/** A place in a list or text: 0, 1, 2 … */
export const count = v.pipe(v.number(), v.safeInteger(), v.minValue(0));

/** A version of a text, which some editors count from below zero. */
export const whole = v.pipe(v.number(), v.safeInteger());

export const figure = v.pipe(v.number(), v.finite());

/** A list that its readers leave as it is. */
export function listOf<Shape extends v.GenericSchema>(shape: Shape) {
    return v.pipe(v.array(shape), v.readonly());
}

/** A field that may be absent; `null`, which some editors send instead, is not told apart from a wrong value. */
export function maybe<Shape extends v.GenericSchema>(shape: Shape) {
    return v.exactOptional(shape);
}
