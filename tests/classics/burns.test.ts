import { describe, it } from 'vitest';
import { but, filled, inlaid } from './recipes';
import { expectRuin } from './ruin';

const ruined = (from: string, to: string): string => but(filled, from, to);

describe('the classic ruined burn', () => {
    it('the air drives soot into it', () =>
        expectRuin({
            text: but(inlaid, 'air off', 'air on'),
            rule: 'air-while-engraving',
            at: 'air on',
            says: /chars the edges/,
            fix: 'Turn the air off',
        }));
    it('one heavy pass chars it', () =>
        expectRuin({
            text: ruined('depth 1.0 mm', 'depth 1.0 mm\n    passes 1'),
            rule: 'one-heavy-pass',
            at: 'passes 1',
            says: /1 mm deep in one pass; (\d) lighter ones char less/,
            by: (text, [passes]) => but(text, 'passes 1', `passes ${passes}`),
        }));
    it('the scan runs along the grain', () =>
        expectRuin({
            text: ruined('scan across grain', 'scan along grain'),
            rule: 'scan-along-grain',
            at: 'scan along grain',
            says: /show as stripes/,
            fix: 'Scan across the grain',
        }));
    it('it is deeper than the board', () =>
        expectRuin({
            text: but(ruined('thickness 9 mm +- 0.2 mm', 'thickness 3 mm +- 0.2 mm'), 'depth 1.0 mm', 'depth 3.1 mm'),
            rule: 'deeper-than-blank',
            at: '3.1 mm',
            says: /oak-9 is 3 mm thick \(2\.8 mm at its thinnest\): at most ([\d.]+ mm) leaves a floor of 1 mm/,
            by: (text, [depth]) => but(text, 'depth 3.1 mm', `depth ${depth}`),
        }));
    it('the floor under it is too thin', () =>
        expectRuin({
            text: but(ruined('thickness 9 mm +- 0.2 mm', 'thickness 3 mm +- 0.2 mm'), 'depth 1.0 mm', 'depth 2.2 mm'),
            rule: 'thin-floor',
            at: '2.2 mm',
            says: /only 0\.8 mm of wood is left, .* so engrave at most ([\d.]+ mm) deep/,
            by: (text, [depth]) => but(text, 'depth 2.2 mm', `depth ${depth}`),
        }));
    it('the art hangs over the edge', () =>
        expectRuin({
            text: ruined('at 45, 30 mm', 'at 80, 30 mm'),
            rule: 'off-blank',
            at: '80, 30 mm',
            says: /up to 6 mm beyond its edge \(tag is 90 mm by 60 mm\)/,
            fix: 'Move it to 74, 30 mm',
        }));
    it('a picture has no outline to follow', () =>
        expectRuin({
            text: ruined('"oars.svg"', '"moon.png" { width 30 mm }').replace('depth 1.0 mm', 'depth 1.0 mm\n    outline 1'),
            rule: 'outline-of-bitmap',
            at: 'outline 1',
            says: /there is no outline to follow/,
            fix: 'Leave the outline out',
        }));
    it('a unit of the wrong kind, and not a word of what would follow from it', () =>
        expectRuin({
            text: ruined('depth 1.0 mm', 'depth 1.0 s'),
            rule: 'wrong-unit',
            at: 's',
            alone: true,
            says: /`depth` is a length, but `s` measures a time/,
            fix: 'Change to `mm`',
            // Other units are offered too, and some of them are too much or too little.
            judged: ['deep-pour', 'deeper-than-blank', 'outside-coupon'].map((rule) => `wrong-unit > ${rule}`),
        }));
    it('half a what?', () =>
        expectRuin({
            text: ruined('depth 1.0 mm', 'depth 1.0'),
            rule: 'missing-unit',
            at: '1.0',
            alone: true,
            says: /such as `depth 0\.50 mm`/,
            fix: '1.0 mm',
            // Other units are offered too, and some of them are too much or too little.
            judged: ['deep-pour', 'deeper-than-blank', 'outside-coupon'].map((rule) => `missing-unit > ${rule}`),
        }));
    it('a sheet of PVC', () =>
        expectRuin({
            text: filled.replaceAll('oak-9', 'pvc-9'),
            rule: 'never-burn',
            at: 'tag',
            says: /pvc gives off hydrogen chloride/,
            by: (text) => text.replaceAll('pvc-9', 'oak-9'),
        }));
    it('a picture shows its pixels', () =>
        expectRuin({
            text: ruined('"oars.svg"', '"moon.png" { width 88 mm }')
                .replace('size 90 x 60 mm', 'size 100 x 100 mm')
                .replace('at 45, 30 mm', '')
                .replace('scan across', 'pitch 0.1 mm\n    scan across'),
            rule: 'picture-resolution',
            at: 'art oars',
            says: /^Its pixels will show: .* 3\.7 lines to a pixel; at 82 % of its size they would not\.$/,
            fix: 'Burn oars 72 mm wide',
        }));
});
