import { describe, expect, it } from 'vitest';
import { isoMoment, momentOf, showWhen } from '../../shared/quantity/calendar';

describe('moments', () => {
    it('are read and written as in ISO 8601', () => {
        expect(momentOf('1970-01-02')).toBe(86_400);
        expect(momentOf('2026-11-26T08:15')).toBe(Date.UTC(2026, 10, 26, 8, 15) / 1000);
        expect(isoMoment(momentOf('2024-02-29 23:59')!)).toBe('2024-02-29T23:59');
    });
    it.each([
        '',
        'tomorrow',
        '2026-02-30',
        '2026-13-01',
        '2026-11-26T25:00',
        '2026-11-26T08:60',
        '26.11.2026',
        '2026-11-26T08:00Z',
    ])('%j is none', (text) => expect(momentOf(text)).toBeUndefined());
    it('are told by the clock, or by the day of the work', () => {
        expect(showWhen(24 * 3600 + 15 * 60, momentOf('2026-11-26T08:00'))).toBe('Fri 27 Nov 2026, 08:15');
        expect(showWhen(24 * 3600 + 15 * 60)).toBe('day 2, 0:15');
        expect(showWhen(1e300, 0)).toBe('never');
        expect(isoMoment(Number.NaN)).toBe('');
    });
});
