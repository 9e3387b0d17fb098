import { describe, expect, it } from 'vitest';
import { pngOf } from '../art/pictures';
import { expectMended, of, one, recipe, silent, words, workshop } from './harness';

/** Half black, 40 x 20 pixels. */
const data = Uint8Array.from({ length: 20 * 41 }, (_, i) => (i % 41 > 20 ? 255 : 0));
const size = { columns: 40, rows: 20, depth: 8, colour: 0 };
workshop({
    'photo.png': pngOf(size, data),
    'faint.png': pngOf(
        size,
        data.map((value, i) => (i % 41 === 0 ? 0 : value === 255 ? 255 : 180)),
    ),
});

const step = (art: string, rest: string, more = '') =>
    recipe(
        `art photo "photo.png" { ${art} } blank tray { of walnut-12 size 200 x 150 mm grain along width } engrave face on tray { art photo ${rest} air off } ${more}`,
    );
/** A picture in dots on a large board: nearly half of its dots begin or end a stretch. */
const large = (rest: string, more = '') =>
    recipe(
        `art photo "faint.png" { width 100 mm dither floyd-steinberg } blank tray { of walnut-12 size 600 x 300 mm grain along width } engrave face on tray { art photo ${rest} air off } ${more}`,
    );
const dots = 'width 8 mm dither floyd-steinberg';

describe('pictures', () => {
    it('coarse for the lines show their pixels; fine ones lose them', async () => {
        const coarse = await one(step('width 40 mm dither ordered', 'tone 80 % pitch 0.1 mm'), 'picture-resolution');
        expect(coarse).toMatchObject({ severity: 'warning' });
        expect(coarse.message).toContain('10 lines to a pixel');
        const fine = await one(step('width 0.8 mm', 'tone 80 % pitch 0.1 mm'), 'picture-resolution');
        expect(fine).toMatchObject({ severity: 'info' });
        expect(coarse.fixes).toEqual([]);
        await silent(step(dots, 'tone 80 % pitch 0.1 mm'), 'picture-resolution');
    });
    it('a little too coarse are burnt smaller, by the side that is written', async () => {
        const wide = step('width 16 mm', 'tone 80 % pitch 0.1 mm');
        expect(await expectMended(wide, await one(wide, 'picture-resolution'))).toContain('width 12 mm');
        const high = step('height 8 mm', 'tone 80 % pitch 0.1 mm');
        expect(await expectMended(high, await one(high, 'picture-resolution'))).toContain('height 6 mm');
        const twice = step('width 16 mm', 'tone 80 % pitch 0.1 mm').replace('air off', 'art photo at 20, 20 mm air off');
        const found = await of(twice, 'picture-resolution');
        expect(found.map(({ fixes }) => fixes)).toEqual([[], []]);
        expect((await one(step('width 26 mm', 'tone 80 % pitch 0.1 mm'), 'picture-resolution')).fixes).toEqual([]);
    });
    it('too fine are scanned finer where a coarser pitch was written than the spot needs', async () => {
        const text = step('width 1.2 mm', 'tone 80 % pitch 0.15 mm');
        const finding = await one(text, 'picture-resolution');
        expect(finding.fixes.map(({ title }) => title)).toEqual(['Scan at a pitch of 0.12 mm']);
        await expectMended(text, finding);
        expect((await one(step('width 0.8 mm', 'tone 80 % pitch 0.1 mm'), 'picture-resolution')).fixes.length).toBeLessThan(2);
        const held = step('width 1.2 mm', 'tone 80 % pitch 0.15 mm speed 300 mm/s');
        expect((await one(held, 'picture-resolution')).fixes).toEqual([]);
    });
    it('in dots are no floor for a fill, nor dug deep', async () => {
        const deep = step(dots, 'depth 0.5 mm');
        expect(words(deep, await one(deep, 'dotted-depth'))).toBe('0.5 mm');
        expect(await of(step(dots, 'tone 80 %', 'fill face with tide-blue'), 'dotted-depth')).toHaveLength(1);
        await silent(step(dots, 'tone 80 %'), 'dotted-depth');
        await silent(step('width 8 mm', 'depth 0.5 mm'), 'dotted-depth');
    });
    it('may be faint where they burn as dots', async () => {
        const faint = step(dots, 'tone 80 %').replace('photo.png', 'faint.png');
        await silent(faint, 'art-missing');
        await silent(faint, 'art-problems');
        await silent(faint, 'nothing-burns');
        const whole = faint.replace('dither floyd-steinberg', '');
        expect(await of(whole, 'nothing-burns')).toHaveLength(1);
        await silent(whole.replace('width 8 mm', 'width 8 mm threshold 20 %'), 'nothing-burns');
    });
    it('alone have greys: `dither` and `curve` do nothing for a drawing', async () => {
        const drawing = step(dots, 'tone 80 %').replace('art flag "flag.svg"', 'art flag "flag.svg" { dither ordered }');
        await expectMended(drawing, await one(drawing, 'tones-unused'));
        const both = step(`${dots} threshold 40 %`, 'tone 80 %');
        const idle = await one(both, 'tones-unused');
        expect(idle.message).toContain('all its greys');
        expect(await expectMended(both, idle)).not.toContain('threshold');
        await silent(step(`${dots} curve 0 % gives 0 %, 100 % gives 90 %`, 'tone 80 %'), 'tones-unused');
    });
});

describe('file-too-long', () => {
    const fine = 'tone 80 % pitch 0.05 mm passes 8';
    it('a picture in dots that no machine file can hold, with the pitch that is enough', async () => {
        const text = large(fine);
        const finding = await one(text, 'file-too-long');
        expect(finding.severity).toBe('error');
        expect(words(text, finding)).toBe('0.05 mm');
        const [, pitch] = /Take a pitch of (0\.\d+) mm/.exec(finding.message)!;
        expect(finding.message).toMatch(/^face takes about [\d.]+ million lines in the machine file; no more than 3 million/);
        await silent(large(`tone 80 % pitch ${pitch} mm passes 8`), 'file-too-long');
        // Of so many passes no pitch is enough that still hides the lines.
        const wide = await one(large('tone 80 % pitch 0.05 mm passes 20'), 'file-too-long');
        expect(wide.message).toMatch(/written\. Make the art smaller, or take fewer passes, or divide it\.$/);
    });
    it('names the longest step of a set-up that is too long only as a whole', async () => {
        const half = (name: string, y: number, passes: number) =>
            `engrave ${name} on tray { rectangle 500 x 100 mm at 300, ${y} mm depth 0.1 mm pitch 0.05 mm passes ${passes} air off }`;
        const text = large('tone 80 % pitch 0.2 mm', `${half('upper', 60, 50)} ${half('lower', 220, 60)}`);
        expect(await of(text, 'file-too-long')).toHaveLength(1);
        const finding = await one(text, 'file-too-long');
        expect(finding.message).toMatch(/^With lower, the longest of its steps, the set-up takes about/);
        await silent(text.replace('engrave lower', 'sand tray { grits 120 }\nengrave lower'), 'file-too-long');
    });
    it('is silent for what is written', async () => {
        await silent(step(dots, 'tone 80 % pitch 0.1 mm'), 'file-too-long');
        await silent(large('tone 80 % pitch 0.3 mm'), 'file-too-long');
    });
});
