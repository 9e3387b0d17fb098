/** What stands in the place of the editor in tests of plain functions: without a catalogue of another language. */
export const l10n = {
    t: (text: string, ...values: readonly (string | number | boolean)[]): string =>
        text.replaceAll(/\{(\d+)\}/g, (_whole, index: string) => String(values[Number(index)])),
};
