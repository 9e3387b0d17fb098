/** ISO 4217, list one, as its maintenance agency publishes it (dated in the file; the copy that the code list's package carries). */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { currencyCodes, isCurrency, minorDigits, showMoney } from '../../shared/quantity/currency';

const xml = readFileSync(createRequire(import.meta.url).resolve('currency-codes/iso-4217-list-one.xml'), 'utf8');
const listed = new Map(
    [...xml.matchAll(/<Ccy>(\w{3})<\/Ccy>\s*<CcyNbr>\d+<\/CcyNbr>\s*<CcyMnrUnts>([\d.NA]+)<\/CcyMnrUnts>/g)].map(
        ([, code, digits]) => [code!, digits!],
    ),
);

describe('ISO 4217', () => {
    it('has every code of the list in which one can be paid, with its digits', () => {
        expect(listed.size).toBeGreaterThan(150);
        // Metals, bonds, special drawing rights and the codes for testing and for none begin with X.
        const paid = [...listed].filter(([code]) => !code.startsWith('X') || ['XAF', 'XCD', 'XOF', 'XPF'].includes(code));
        expect(paid.filter(([code]) => !isCurrency(code)).map(([code]) => code)).toEqual([]);
        expect(paid.filter(([code, digits]) => minorDigits(code) !== Number(digits)).map(([code]) => code)).toEqual([]);
    });
    it('has no code that the list lacks', () => {
        expect([...currencyCodes()].filter((code) => !listed.has(code))).toEqual([]);
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
