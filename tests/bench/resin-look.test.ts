import { parse } from 'culori';
import { describe, expect, it } from 'vitest';
import { contrast } from '../../shared/bench/contrast';
import { opacityOf, resinOver } from '../../shared/bench/resin-look';

const where = { uri: 'inmemory://a', offset: 0, length: 1 };
const ratio = (value: number) => ({ value, unit: '%', dimension: 'ratio' as const, tolerance: 0, where });
const tinted = { colour: '#1d5f7a', opacity: ratio(0.9) };
const clear = { colour: '#e6dcc3' };
const char = '#2b1a10';

describe('how poured resin looks', () => {
    it('is the ground where there is none of it, and its own colour where it is deep', () => {
        expect(resinOver(tinted, char, 0)).toBe(char);
        expect(contrast(resinOver(tinted, '#ffffff', 20), tinted.colour)).toBeLessThan(0.5);
    });

    it('lets through by the millimetre what it lets through twice in two halves of one', () => {
        const once = resinOver(tinted, '#c08040', 1);
        const twice = resinOver(tinted, resinOver(tinted, '#c08040', 0.5), 0.5);
        expect(contrast(once, twice)).toBeLessThan(0.6);
    });

    it('hides in a millimetre as much as its stock says', () => {
        const black = { colour: '#000000', opacity: ratio(0.75) };
        const seen = parse(resinOver(black, '#ffffff', 1)) as { r: number };
        const light = ((seen.r + 0.055) / 1.055) ** 2.4;
        expect(light).toBeCloseTo(0.25, 2);
    });

    it('is dark over a burnt floor where it is clear, not beige', () => {
        const seen = resinOver(clear, char, 0.6);
        expect(contrast(seen, char)).toBeLessThan(2);
        expect(contrast(seen, clear.colour)).toBeGreaterThan(50);
        expect(contrast(resinOver(clear, '#ffffff', 10), clear.colour)).toBeLessThan(0.5);
    });

    it('hides nearly all with powder in it', () => {
        expect(opacityOf({ colour: '#b08d57', powder: ratio(0.3) })).toBeGreaterThan(0.95);
    });
});
