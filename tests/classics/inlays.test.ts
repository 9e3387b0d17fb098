import { describe, it } from 'vitest';
import { but, inlaid } from './recipes';
import { expectRuin } from './ruin';

const ruined = (from: string, to: string): string => but(inlaid, from, to);

describe('the classic ruined inlay', () => {
    it('the veneer half is not mirrored', () =>
        expectRuin({
            text: ruined('    mirror\n', ''),
            rule: 'not-mirrored',
            at: 'engrave',
            says: /turned over, ([\d.]+ mm²) of its ([\d.]+ mm²) land on the board/,
            fix: 'Mirror relief',
        }));
    it('it is mirrored twice', () =>
        expectRuin({
            text: ruined('    mirror\n', '    mirror\n    mirror\n'),
            rule: 'mirrored-twice',
            at: 'mirror',
            says: /relief is mirrored 2 times/,
            fix: 'Keep one mirror',
        }));
    it('the pocket is mirrored too', () =>
        expectRuin({
            text: ruined('    art cleat\n', '    art cleat\n    mirror\n'),
            rule: 'mirrored-twice',
            at: 'mirror',
            says: /Both halves are mirrored: relief and pocket/,
            fix: 'Do not mirror pocket',
        }));
    it('it is not inverse', () =>
        expectRuin({
            text: ruined(' inverse within grown 6 mm', ''),
            rule: 'not-inverse',
            at: 'cleat',
            says: /must burn everything around it/,
            fix: /grown by 6 mm$/,
        }));
    it('the pocket is too shallow for the veneer', () =>
        expectRuin({
            text: ruined('depth 0.55 mm', 'depth 0.25 mm'),
            rule: 'veneer-proud',
            at: '0.25 mm',
            says: /stands 0\.41 mm .* proud .* it needs a depth of (0\.55 mm)\.$/,
            by: (text, [depth]) => but(text, '0.25 mm', depth!),
        }));
    it('the pocket is deeper than the veneer is thick', () =>
        expectRuin({
            text: ruined('depth 0.55 mm', 'depth 1.2 mm'),
            rule: 'veneer-proud',
            at: '1.2 mm',
            says: /lies 0\.54 mm below the face .* it needs a depth of 0\.55 mm\.$/,
            fix: 'Make pocket 0.55 mm deep',
        }));
    it('sanding takes the veneer away', () =>
        expectRuin({
            text: ruined('then 0.10 mm', 'then 0.40 mm'),
            rule: 'veneer-thin',
            at: '0.40 mm',
            says: /^After sanding 0\.09 mm of veneer is left in pocket, .* 0\.2 mm should stay; a pocket of (0\.\d+ mm) would leave enough\.$/,
            by: (text, [depth]) => but(text, 'depth 0.55 mm', `depth ${depth}`),
        }));
    it('sanding takes all of the veneer away', () =>
        expectRuin({
            text: ruined('then 0.10 mm', 'then 0.70 mm'),
            rule: 'veneer-thin',
            at: '0.70 mm',
            alone: true,
            says: /Nothing is left of the veneer in pocket after sanding, which takes 0\.7 mm/,
            fix: 'Take only 0.15 mm off the face',
        }));
    it('the pocket goes through the board', () =>
        expectRuin({
            text: ruined('depth 0.55 mm', 'depth through'),
            rule: 'pocket-without-floor',
            at: 'depth through',
            alone: true,
            says: /no floor to glue the inlay to; 0\.55 mm deep it would have one/,
            fix: 'Make pocket 0.55 mm deep',
        }));
    it('a round one without marks', () =>
        expectRuin({
            text: ruined('"cleat.svg"', '"buoy.svg"'),
            rule: 'round-without-marks',
            at: 'inlay',
            says: /fits in every position, and no marks say/,
            fix: 'Add 3 marks',
        }));
    it('the pieces of the veneer half have nothing behind them', () =>
        expectRuin({
            text: ruined('    backing foil\n', ''),
            rule: 'no-backing',
            at: 'leaf',
            says: /leaves 1 loose piece \([\d.]+ mm²\)/,
            fix: 'Back leaf with foil',
        }));
    it('foil under a beam that it does not stop', () =>
        expectRuin({
            text: ruined('beam co2', 'beam fibre'),
            rule: 'foil-and-fibre',
            at: 'leaf',
            says: /beam of slip \(1\.06 µm\); it stops that of a (CO2)/,
            by: (text, [beam]) => but(text, 'beam fibre', `beam ${beam!.toLowerCase()}`),
        }));
    it('it is peeled while the glue is wet, and sanded too', () =>
        expectRuin({
            text: ruined('wait 12 h', 'wait 2 h'),
            rule: 'peel-before-dry',
            at: 'peel',
            says: /needs 12 h before leaf can be peeled; here it has had 2 h/,
            fix: 'Wait 12 h',
        }));
    it('nobody waits for the glue', () =>
        expectRuin({
            text: ruined('  wait 12 h\n', ''),
            rule: 'peel-before-dry',
            at: 'peel',
            says: /needs (12 h) before leaf can be peeled; here it has had 0 s/,
            by: (text, [time]) => but(text, '  peel leaf', `  wait ${time}\n  peel leaf`),
        }));
    it('it is finished before it is sanded', () =>
        expectRuin({
            text: ruined('  sand plank', '  finish plank with oil-varnish\n  sand plank').replace(
                / {2}finish plank with oil-varnish\n$/m,
                '',
            ),
            rule: 'finish-before-sanding',
            at: 'finish',
            says: /before it is sanded/,
            fix: 'Sand first',
        }));
    it('the grain of a wide one lies across the board’s', () =>
        expectRuin({
            text: ruined('"cleat.svg"', '"keel.svg"').replace(
                'size 90 x 80 mm\n    grain along width',
                'size 150 x 80 mm\n    grain along height',
            ),
            rule: 'movement-across-inlay',
            at: 'inlay',
            says: /move [\d.]+ mm against each other .* pieces of at most \d+ mm move too little/,
            fix: 'Lay the grain of leaf along the board’s',
        }));
    it('its veneer is wetter than the board', () =>
        expectRuin({
            text: ruined('0.02 mm  moisture 8 %', '0.02 mm  moisture 12 %'),
            rule: 'moisture-mismatch',
            at: 'inlay',
            says: /has (8 %) of moisture and maple-06 12 %, which is 3 % or more apart/,
            by: (text, [moisture]) => but(text, 'moisture 12 %', `moisture ${moisture}`),
        }));
    it('it jams before it reaches the floor', () =>
        expectRuin({
            text: ruined('clearance 0.15 mm', 'clearance 0.02 mm'),
            rule: 'jams-before-floor',
            at: '0.02 mm',
            says: /the walls lean \d+° and need 0\.\d+ mm/,
            fix: 'Give 0.',
        }));
    it('the floor is sealed before the glue goes in', () =>
        expectRuin({
            text: ruined(
                '  inlay relief into pocket',
                '  seal plank with shellac {\n    coats 2\n  }\n  wait 2 h\n  inlay relief into pocket',
            ),
            rule: 'glue-on-sealed',
            at: 'inlay',
            says: /the glue does not soak in, and does not hold\.$/,
            fix: 'Engrave pocket after sealing',
        }));
    it('nobody sands it flush', () =>
        expectRuin({
            text: ruined('  sand plank {\n    flush then 0.10 mm\n    grits 120, 180, 240\n  }\n', ''),
            rule: 'left-proud',
            at: 'inlay',
            says: /^leaf still stands above the face of plank at the end/,
            fix: 'Sand plank flush',
            judged: ['left-proud > leaves-scorch'], // nobody knows what sanding leaves before there is any
        }));
});
