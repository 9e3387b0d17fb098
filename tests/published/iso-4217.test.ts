/**
 * Currencies (ISO 4217). The bundled list is the maintenance agency's own, so the witness is another body's data: Unicode CLDR,
 * as the language runtime carries it. CLDR has no units of account, and gives fewer digits where the small coins have
 * gone out of use.
 */
import { describe, expect, it } from 'vitest';
import { currencyCodes, isCurrency, minorDigits, showMoney } from '../../shared/quantity/currency';

const known = new Set(Intl.supportedValuesOf('currency'));
const digitsOf = (currency: string): number | undefined =>
    new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits;

describe('currencies against CLDR', () => {
    const shared = [...currencyCodes()].filter((code) => known.has(code));
    it('knows nearly all of them, and of those that it lacks most are units of account', () => {
        expect(shared.length).toBeGreaterThan(145);
        const account = ['BOV', 'CHE', 'CHW', 'CLF', 'COU', 'MXV', 'USN', 'UYI', 'UYW'];
        const others = [...currencyCodes()].filter((code) => !known.has(code) && !account.includes(code));
        expect(others.length).toBeLessThan(6);
    });
    it('agrees on the digits, or has none where the standard has some', () => {
        const differing = shared.filter((code) => digitsOf(code) !== minorDigits(code));
        expect(differing.filter((code) => digitsOf(code) !== 0)).toEqual([]);
        expect(differing.length).toBeLessThan(25);
    });
    it('is none: gone, bookkeeping, metals, tests, or misspelt', () => {
        expect(['DEM', 'FRF', 'XXX', 'XTS', 'XAU', 'eur', 'EURO', ''].filter(isCurrency)).toEqual([]);
    });
    it('writes amounts with the digits of their currency', () => {
        expect(showMoney(48, 'EUR')).toBe('48.00 EUR');
        expect(showMoney(48.4, 'JPY')).toBe('48 JPY');
        expect(showMoney(1.23456, 'KWD')).toBe('1.235 KWD');
        expect(showMoney(-0.001, 'EUR')).toBe('0.00 EUR');
        expect(showMoney(Number.NaN, 'EUR')).toBe('unknown EUR');
    });
});
