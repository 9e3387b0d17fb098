import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { MarkupContent } from 'vscode-languageserver';
import { type MemoryWorkshop, memoryWorkshop } from '../kit/memory-workshop';
import { art, shop } from '../kit/shop';

let kit: MemoryWorkshop;
beforeAll(async () => {
    kit = await memoryWorkshop(art);
});

/** What is said at `<|>`. */
async function hover(marked: string): Promise<string> {
    const offset = marked.indexOf('<|>');
    const document = await kit.open(marked.replace('<|>', ''));
    const said = await kit.workshop.services.lsp.HoverProvider!.getHoverContent(document, {
        textDocument: { uri: document.uri.toString() },
        position: document.textDocument.positionAt(offset),
    });
    return (said?.contents as MarkupContent | undefined)?.value ?? '';
}

const recipe = (body: string) => `${shop}\nrecipe tray { laser shed\n ${body}\n}`;

describe('hover', () => {
    it('a name says what it stands for, with its figures', async () => {
        expect(await hover(recipe('blank b { of walnut-<|>12 }'))).toContain('thickness 12 mm +- 0.3 mm');
    });
    it('a comment is left out, and a text with two slashes stays whole', async () => {
        const said = await hover(
            recipe('blank b { of walnut-<|>12 }').replace(
                'thickness 12 mm',
                'kept "http://a.example/\\"b\\"" // seen\n  thickness 12 mm // 1/2 in',
            ),
        );
        expect(said).toContain('"http://a.example/\\"b\\""\n');
        expect(said).not.toContain('seen');
        expect(said).not.toContain('1/2 in');
    });
    it('built-in stock says where its figures come from', async () => {
        const said = await hover(shop.replace('wood black-walnut', 'wood black-wal<|>nut'));
        expect(said).toContain('wood black-walnut {');
        expect(said).toContain('density 616 kg/m3');
        expect(said).toContain('Juglans nigra');
        expect(said).toContain('- `density`: Seen in Alden, Hardwoods of North America, FPL-GTR-83');
        expect(said).toContain('- `tangential`: Seen in Wood Handbook, FPL-GTR-190, 2010, Table 13-5');
    });
    it('stock of a built-in kind says where the figures of the kind come from', async () => {
        const said = await hover(
            recipe('').replace('recipe tray', 'resin bl<|>ue { kind slow-epoxy pot life 30 min }\nrecipe tray'),
        );
        expect(said).toContain('Like `slow-epoxy` where nothing else is written:');
        expect(said).toContain('- `recoat`: As table-top-epoxy: 4 to 10 h, seen in trade guidance');
        expect(said).not.toContain('- `pot`');
    });
    it('a laser says what follows from its figures: spot, reach of the focus, power curve, run-up', async () => {
        const lens = 'lens 50.8 mm aperture 7 mm quality 1.2 least power 5 % set 50 % gives 18 W';
        const said = await hover(recipe('').replace('spot 0.15 mm', lens).replace('laser shed\n', 'laser sh<|>ed\n'));
        // d = 4 · 1.2 · 10.6 um · 50.8 mm / (pi · 7 mm); zR = pi (d/2)² / (1.2 · 10.6 um).
        expect(said).toContain('spot: 0.12 mm by its lens (M² 1.2)');
        expect(said).toContain('focus reaches (Rayleigh range): 0.85 mm; 3 heights for 2 mm');
        expect(said).toContain('half of the setting gives 18 W');
        expect(said).toContain('least power: 1.8 W, a setting of 5 %');
        expect(said).toContain('run-up to its top speed: 30 mm');
        expect(said).toContain('in machine files X 0 Y 0 is the lower left corner of the blank');
        const other = recipe('').replace('spot 0.15 mm', 'spot 0.15 mm zero middle').replace('laser shed\n', 'laser sh<|>ed\n');
        expect(await hover(other)).toContain('X 0 Y 0 is the middle of the blank');
        expect(await hover(recipe('').replace('spot 0.15 mm', '').replace('laser shed\n', 'laser sh<|>ed\n'))).toContain(
            'spot: not known',
        );
    });
    it('a power in per cent says the watts of the curve, and watts the setting', async () => {
        const by = (power: string) =>
            hover(recipe(`engrave e on b { depth 1 mm power ${power} }`).replace('spot 0.15 mm', 'set 50 % gives 18 W'));
        expect(await by('2<|>5 %')).toContain('= 9 W');
        expect(await by('1<|>8 W')).toContain('= 50 %');
    });
    it('a day says what it is the day of', async () => {
        const said = await hover(shop.replace('spot 0.15 mm', 'spot 0.15 mm serviced 2026-<|>06-01 "new lens"'));
        expect(said).toContain('The day on which lens, mirrors or source were changed');
    });
    it('stock of a kind says what it is like', async () => {
        const said = await hover(recipe('engrave p on b { depth 1 mm } fill p with tide-<|>blue'));
        expect(said).toContain('Like `slow-epoxy`');
        expect(said).toContain('pot life');
    });
    it('what its kind says of the same line is left out, and so is a circle of kinds', async () => {
        const said = await hover(
            'resin a { kind b  cure 3 h } resin b { kind c  cure 5 h  density 1 g/ml } resin c { kind <|>a }',
        );
        expect(said).toContain('cure 3 h');
        expect(said).toContain('density 1 g/ml');
        expect(said).not.toContain('cure 5 h');
    });
    it('a declaration says the same as the places where it is named', async () => {
        expect(await hover('// Bought in May.\nboard oa<|>k { wood white-oak }')).toMatch(/board oak.*Bought in May/s);
        expect(await hover('// Of the loft.\n\nboard oa<|>k { wood white-oak }')).not.toContain('loft');
    });
    it('a number is told in other units, with its range', async () => {
        const said = await hover(shop.replace('thickness 12 mm', 'thickness 1<|>2 mm'));
        expect(said).toContain('0.4724 in');
        expect(said).toContain('From 11.7 to 12.3 mm (0.4606 to 0.4843 in).');
    });
    it('a fraction of an inch is told in millimetres', async () => {
        expect(await hover(recipe('engrave p on b { depth 1/1<|>6 in }'))).toMatch(/1\.58[78] mm/);
    });
    it('a fraction is told as a decimal, a range by its ends', async () => {
        expect(await hover(recipe('engrave p on b { depth 3/3<|>2 in }'))).toContain('= 0.09375 in');
        const range = await hover(recipe('engrave p on b { depth 1 mm } check p { depth 0.<|>48 .. 0.60 mm }'));
        expect(range).toContain('From 0.48 to 0.6 mm (0.0189 to 0.0236 in).');
        expect(range).not.toContain('= 0.0');
    });
    it('a share of the power in watts of the laser, and watts as a share', async () => {
        expect(await hover(recipe('engrave p on b { power 4<|>0 % }'))).toContain('= 18 W');
        expect(await hover(recipe('engrave p on b { power 9 <|>W }'))).toContain('= 20 %');
        expect(await hover(shop.replace('burn 20 %', 'burn 2<|>0 %'))).toContain('= 9 W');
        expect(await hover(recipe('engrave p on b { tone 4<|>0 % }'))).not.toContain(' W');
        expect(await hover(shop.replace('power 45 W', 'power 4<|>5 W'))).not.toContain('= ');
    });
    it('a wave in the units of light', async () => {
        expect(await hover('beam x { wavelength 10.<|>6 um }')).toContain('= 10600 nm');
    });
    it('a count, a word of a list, a colour', async () => {
        expect(await hover(recipe('engrave p on b { passes <|>3 }'))).toContain('How often');
        expect(await hover('wood x { pores ri<|>ng }')).toContain('One of `diffuse`, `semi-ring`, `ring`, `softwood`.');
        expect(await hover('resin x { colour #1f<|>6f8b }')).not.toBe('');
        expect(await hover('laser x { ze<|>ro middle }')).toContain('Where X 0 Y 0 of the machine files lies on the blank');
        expect(await hover('laser x { zero mid<|>dle }')).toContain(
            '`lower-left`, `lower-right`, `upper-left`, `upper-right`, `middle`',
        );
    });
    it('art by the parts that can be picked, and a pick', async () => {
        const art = 'art flag "flag.svg"\nblank b { of walnut-12 }\nengrave p on b { art flag #pole depth 1 mm }';
        expect(await hover(recipe(art.replace('flag.svg', 'fl<|>ag.svg')))).toContain('`#pole`, `.cloth`');
        expect(await hover(recipe(art.replace('art flag #', 'art fl<|>ag #')))).toContain('`#pole`, `.cloth`');
        expect(await hover(recipe(art.replace('#pole', '#po<|>le')))).toContain('`pole`');
        expect(await hover(recipe(art.replace('flag.svg', 'no<|>ne.svg')))).toBe('The art in `none.svg`.');
    });
    it('what a used file brings in', async () => {
        await kit.open('board oak-9 { wood white-oak }', 'oaks.kerf');
        expect(await hover('use "oa<|>ks.kerf"')).toBe('Makes known here: board `oak-9`.');
        expect(await hover('use "no<|>ne.kerf"')).toContain('could not be read');
    });
    it('a rule that is allowed says when it shows', async () => {
        expect(await hover(recipe('allow not-mir<|>rored because "x"'))).toContain('**');
        expect(await hover(recipe('allow no-such-<|>rule because "x"'))).toBe('');
    });
    it('both sides of a size are told', async () => {
        expect(await hover(shop.replace('field 600 x 400', 'field 600 x 4<|>00'))).toContain('23.62 × 15.75 in');
    });
    it('a word says what it does, with an example', async () => {
        const said = await hover(recipe('engrave p on b { mir<|>ror }'));
        expect(said).toMatch(/^.{10,}\n\n```kerfbook\nmirror/s);
        expect(await hover(recipe('en<|>grave p on b { }'))).toContain('```kerfbook\nengrave');
        expect(await hover(shop.replace('top speed', 'to<|>p speed'))).toContain('top speed');
    });
    it('says nothing in comments, strings and blanks', async () => {
        expect(await hover('// a com<|>ment')).toBe('');
        expect(await hover(recipe('do "wi<|>pe it"'))).toBe('');
        expect(await hover('  <|>  ')).toBe('');
    });
    it('never throws, wherever the cursor is, also in half of a sample', async () => {
        const sample = readFileSync(fileURLToPath(new URL('../../samples/heron-tray.kerf', import.meta.url)), 'utf8');
        await fc.assert(
            fc.asyncProperty(fc.nat(sample.length), fc.nat(sample.length), async (cut, at) => {
                const text = sample.slice(0, cut);
                await hover(`${text.slice(0, Math.min(at, cut))}<|>${text.slice(Math.min(at, cut))}`);
            }),
            { numRuns: 60 },
        );
    });
});
