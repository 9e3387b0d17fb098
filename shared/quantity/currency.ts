import list from 'currency-codes/data.js';

const codes: ReadonlyMap<string, { readonly digits: number; readonly name: string }> = new Map(
    list.filter(({ code }) => !notPaidWith(code)).map(({ code, digits, currency }) => [code, { digits, name: currency }]),
);

/** Metals, testing and bookkeeping codes of the standard begin with X; these four are currencies. */
function notPaidWith(code: string): boolean {
    return code.startsWith('X') && !['XAF', 'XCD', 'XOF', 'XPF'].includes(code);
}

/** Codes of ISO 4217 in which one can be paid. */
export function currencyCodes(): Iterable<string> {
    return codes.keys();
}

export function isCurrency(code: string): boolean {
    return codes.has(code);
}

/** Such as "Euro"; undefined for a code that is none. */
export function currencyName(code: string): string | undefined {
    return codes.get(code)?.name;
}

/** Digits behind the point (ISO 4217): 2 for EUR, 0 for JPY; 2 for a code that is none. */
export function minorDigits(code: string): number {
    return codes.get(code)?.digits ?? 2;
}
