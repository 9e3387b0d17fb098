/** The same order everywhere and on every machine: by code units, whatever the language of whoever reads. For `sort`. */
export function compareText(a: string, b: string): number {
    return a < b ? -1 : a > b ? 1 : 0;
}
