import { describe, it } from 'vitest';
import { but, filled } from './recipes';
import { expectRuin } from './ruin';

const ruined = (from: string, to: string): string => but(filled, from, to);
const seal = '  seal tag with shellac {\n    coats 2\n  }\n  wait 2 h\n';
const pour = '  fill hollow with harbour-blue\n';

describe('the classic ruined fill', () => {
    it('nothing has sealed an open-pored wood', () =>
        expectRuin({
            text: ruined(seal, ''),
            rule: 'unsealed-fill',
            at: 'fill',
            says: /white-oak bleeds \(ring-porous\)/,
            fix: 'Seal with two coats of shellac first',
        }));
    it('it is sealed only afterwards', () =>
        expectRuin({
            text: ruined(`${seal}${pour}`, `${pour}${seal}`),
            rule: 'unsealed-fill',
            at: 'fill',
            says: /before anything has sealed hollow/,
            fix: 'Seal before filling',
        }));
    it('sanding leaves a skin of it', () =>
        expectRuin({
            text: ruined('then 0.20 mm', 'then 0.95 mm'),
            rule: 'fill-sanded-away',
            at: '0.95 mm',
            says: /0\.2 mm should stay; ([\d.]+ mm) deep would leave enough\.$/,
            by: (text, [depth]) => but(text, 'depth 1.0 mm', `depth ${depth}`),
        }));
    it('sanding takes it all away', () =>
        expectRuin({
            text: ruined('then 0.20 mm', 'then 1.2 mm'),
            rule: 'fill-sanded-away',
            at: '1.2 mm',
            alone: true,
            says: /^Sanding takes 1\.2 mm off the face in all, and hollow is 1 mm deep: all of harbour-blue goes/,
            fix: 'Take only 0.55 mm off the face',
        }));
    it('a mere colour has no depth for it', () =>
        expectRuin({
            text: ruined('depth 1.0 mm', 'tone 70 %'),
            rule: 'shallow-fill',
            at: 'hollow',
            says: /only colours the wood: there is no depth for harbour-blue to sit in; 0\.75 mm would do\.$/,
            fix: 'Engrave hollow 0.75 mm deep instead',
        }));
    it('the engraving is too shallow for it', () =>
        expectRuin({
            text: ruined('depth 1.0 mm', 'depth 0.3 mm'),
            rule: 'shallow-fill',
            at: 'hollow',
            says: /a fill needs 0\.3 mm to hold; ([\d.]+ mm) would do\.$/,
            by: (text, [depth]) => but(text, 'depth 0.3 mm', `depth ${depth}`),
        }));
    it('the pocket goes through the board', () =>
        expectRuin({
            text: ruined('depth 1.0 mm', 'depth through'),
            rule: 'pocket-without-floor',
            at: 'depth through',
            alone: true,
            says: /the fill runs out at the back; 0\.75 mm deep/,
            fix: 'Make hollow 0.75 mm deep',
        }));
    it('it is deeper than may be poured at once', () =>
        expectRuin({
            text: ruined('kind slow-epoxy', 'kind slow-epoxy  deepest pour 0.4 mm'),
            rule: 'deep-pour',
            at: 'fill',
            says: /1 mm deep; harbour-blue may be poured 0\.4 mm at once: pour 3 layers of 0\.33 mm, each 4 h to 10 h after the one before/,
            fix: 'Pour 3 layers',
            judged: ['deep-pour > small-mix'], // a third of the resin a layer
        }));
    it('the resin sets before the last of many is filled', () =>
        expectRuin({
            text: ruined('make 6', 'make 40'),
            rule: 'short-pot-life',
            at: 'fill',
            says: /stays fluid for 40 min: for 40 pieces mix 5 cups, each for (8)/,
            by: (text, [pieces]) => but(text, 'make 40', `make ${pieces}`),
        }));
    it('it is sanded while it is soft', () =>
        expectRuin({
            text: ruined('wait 24 h', 'wait 6 h'),
            rule: 'sand-before-cure',
            at: 'sand',
            says: /needs 1 d before it can be sanded/,
            fix: 'Wait 24 h',
        }));
    it('the scorch stays on the face', () =>
        expectRuin({
            text: ruined('flush then 0.20 mm', 'flush'),
            rule: 'leaves-scorch',
            at: 'sand',
            says: /a tenth of a millimetre takes them off/,
            fix: 'Take 0.1 mm off the face',
        }));
    it('a grit is skipped too many', () =>
        expectRuin({
            text: ruined('grits 100, 150, 220', 'grits 60, 220'),
            rule: 'grit-jump',
            at: 'grits 60, 220',
            says: /4 times as fine/,
            fix: 'Sand with 60, 100, 150, 220',
        }));
    it('its lines are too narrow for the resin', () =>
        expectRuin({
            text: ruined('"oars.svg"', '"ropes.svg"'),
            rule: 'narrow-slots',
            at: 'fill',
            says: /^4 places in hollow are narrower than the 0\.4 mm that harbour-blue flows into, 0\.3 mm at the narrowest/,
            fix: 'Give hollow an offset of 0.06 mm',
        }));
    it('nobody sands it flush', () =>
        expectRuin({
            text: ruined('  sand tag {\n    flush then 0.20 mm\n    grits 100, 150, 220\n  }\n', ''),
            rule: 'left-proud',
            at: 'fill',
            says: /^harbour-blue still stands above the face of tag at the end/,
            fix: 'Sand tag flush',
            judged: ['left-proud > leaves-scorch'], // nobody knows what sanding leaves before there is any
        }));
});
