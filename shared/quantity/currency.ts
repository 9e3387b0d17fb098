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

/** Such as "Euro"; undefined for a code that is not in ISO 4217. */
export function currencyName(code: string): string | undefined {
    return codes.get(code)?.name;
}

/** Digits behind the point (ISO 4217): 2 for EUR, 0 for JPY; 2 for a code that is not in ISO 4217. */
export function minorDigits(code: string): number {
    return codes.get(code)?.digits ?? 2;
}
/** An amount with its currency, as "48.00 EUR"; always with the currency's own digits, so that columns line up. */
export function showMoney(amount: number, code: string): string {
    if (!Number.isFinite(amount)) return `unknown ${code}`;
    const digits = Math.abs(amount) < 1e12 ? amount.toFixed(minorDigits(code)) : amount.toExponential(2);
    return `${Number(digits) === 0 ? (0).toFixed(minorDigits(code)) : digits} ${code}`;
}
