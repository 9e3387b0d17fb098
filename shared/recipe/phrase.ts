declare const phrased: unique symbol;

/**
 * Words for a person to read; made by `phrase` alone.
 * @TJS-type string
 */
export type Message = string & { readonly [phrased]: true };

/**
 * The one place that each message of a finding, of its fixes and of the art goes through. The fixed parts are what a catalogue of
 * another language would be asked for, and the values what it puts in; there is no catalogue yet. It is called when
 * the words are needed, never while a module is read: then nobody knows the reader's language.
 */
export function phrase(fixed: TemplateStringsArray, ...values: readonly (string | number | undefined)[]): Message {
    return String.raw({ raw: fixed }, ...values) as Message;
}
