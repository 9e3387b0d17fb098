import { describe, expect, it } from 'vitest';
import { costOf, type Rates } from '../../shared/bench/cost';
import { minorDigits } from '../../shared/quantity/currency';

const rates: Rates = { currency: 'EUR', hourly: 30, machineHourly: 12, overhead: 0.2, markUp: 0.5 };

describe('cost and price', () => {
    it('adds up by hand', () => {
        // 2 x 10 = 20 of material; 2 h at 30 and 1 h at 12 make 72; a fifth on top of 92 is 18.40.
        const cost = costOf(4, { attended: 7200, machine: 3600 }, [{ item: 'board', amount: 2, unitPrice: 10 }], rates);
        expect(cost).toMatchObject({ materials: 20, work: 60, machine: 12, unpriced: [] });
        expect(cost.overhead).toBeCloseTo(18.4, 9);
        expect(cost.total).toBeCloseTo(110.4, 9);
        expect(cost.each).toBeCloseTo(27.6, 9);
        expect(cost.price).toBeCloseTo(41.4, 9);
    });
    it('says what it has no price for', () => {
        const cost = costOf(
            1,
            { attended: 0, machine: 0 },
            [
                { item: 'glue', amount: 5 },
                { item: 'foil', amount: 1, unitPrice: Number.NaN },
            ],
            rates,
        );
        expect(cost.unpriced).toEqual(['glue', 'foil']);
        expect(cost.total).toBe(0);
    });
    it('rounds a price up to the smallest coin', () => {
        const one = (currency: string): number =>
            costOf(3, { attended: 0, machine: 0 }, [{ item: 'a', amount: 1, unitPrice: 10 }], {
                ...rates,
                currency,
                overhead: 0,
                markUp: 0,
            }).price;
        expect(one('EUR')).toBe(3.34);
        expect(one('JPY')).toBe(4);
        expect(one('BHD')).toBe(3.334);
    });
    it('knows the digits of ISO 4217 codes and takes two for what is none', () => {
        expect(['EUR', 'USD', 'JPY', 'KWD', '', 'not money'].map(minorDigits)).toEqual([2, 2, 0, 3, 2, 2]);
    });
    it('odd figures count as nothing', () => {
        const cost = costOf(
            Number.NaN,
            { attended: Number.NaN, machine: -1 },
            [{ item: 'a', amount: Number.POSITIVE_INFINITY, unitPrice: 1 }],
            { ...rates, hourly: -3 },
        );
        expect(cost).toMatchObject({ total: 0, price: 0, unpriced: ['a'] });
    });
});
