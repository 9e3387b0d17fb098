import { describe, expect, it } from 'vitest';
import { expectMarked } from './marked';

const board = 'board oak { wood white-oak  thickness 10 mm  moisture 8 % }';

describe('what the text alone says', () => {
    it('an unknown name, with a suggestion and a fix', async () => {
        const findings = await expectMarked(`
board oak { wood white-oaks  thickness 10 mm  moisture 8 % }
                 ^^^^^^^^^^ unknown-name: white-oak`);
        expect(findings[0]?.fixes[0]?.changes[0]).toMatchObject({ do: 'replace', text: 'white-oak' });
    });
    it('a wrong kind of unit, at the unit', () =>
        expectMarked(`
board oak { wood white-oak  thickness 10 s  moisture 8 % }
                                         ^ wrong-unit: a length`));
    it('a missing unit, with fixes', async () => {
        const findings = await expectMarked(`
board oak { wood white-oak  thickness 10  moisture 8 % }
                                      ^^ missing-unit: needs a unit`);
        expect(findings[0]?.fixes[0]).toMatchObject({ title: '10 mm' });
    });
    it('a good board has nothing to say', () => expectMarked(board));
    it('another unit only where all that it holds for are measured in it', async () => {
        const blank = (size: string, marked: string) => `
${board}
recipe tray { blank tray { of oak  size ${size} } sand tray { take 0.1 mm } }
${' '.repeat(40)}${'^'.repeat(marked.length)} unlikely-magnitude: unusually`;
        const [much] = await expectMarked(blank('6000 x 200 mm', '6000'));
        expect(much).toMatchObject({ message: expect.not.stringContaining('Did you mean'), fixes: [] });
        const [little] = await expectMarked(blank('0.05 x 400 mm', '0.05'));
        expect(little).toMatchObject({ message: expect.not.stringContaining('Did you mean'), fixes: [] });
        const [slip] = await expectMarked(blank('3 x 8 mm', '3'));
        expect(slip?.fixes).toMatchObject([{ title: 'Change the unit to cm', changes: [{ text: 'cm', where: { length: 2 } }] }]);
    });
    it('what a path or a number is to be, where none is written yet', async () => {
        await expectMarked('use ""\n    ^^ use-missing: Between the quotes comes a path');
        await expectMarked(`
recipe r { art bird ""  blank tray { of oak  size 90 x 60 mm }  engrave a on tray { art bird  tone 50 % }  laser shed }
               ^^^^ missing-property: which file it is
${board}
laser shed { beam co2  power 45 W }`);
        await expectMarked(`${board}
recipe r { blank tray { of oak  size 90 x 60 mm }  sand tray { grits } }
                                                                     ^ syntax: After \`grits\` comes a grit such as \`120\``);
        const [comma] = await expectMarked(`${board}
recipe r { blank tray { of oak  size 90 x 60 mm }  sand tray { take 0.1 mm grits 120 180, 240 } }
                                                                                     ^^^ syntax: Between \`120\` and \`180\` a comma is missing`);
        expect(comma?.fixes[0]?.changes).toMatchObject([{ do: 'replace', text: ',', where: { length: 0 } }]);
        await expectMarked(`
board b { wood white-oak  thickness 10 mm  moisture 8 %  price 9 for }
                                                                     ^ syntax: a number of sheets or an area
shop s { currency EUR  hourly 30 }`);
    });
    it('a bare number only in units that such things are measured in', async () => {
        const findings = await expectMarked(`
${board}
recipe tray { blank tray { of oak  size 4000 x 2000 } sand tray { take 0.1 mm } }
                                               ^^^^ missing-unit: needs a unit`);
        expect(findings[0]?.fixes.map(({ title }) => title)).toEqual(['2000 mm']);
    });
});

describe('the zero of a laser', () => {
    it('is one of the corners of a blank, or its middle', async () => {
        await expectMarked('laser shed { beam co2  power 45 W  zero upper-right }');
        await expectMarked(`laser shed { beam co2  power 45 W  zero middel }
                                        ^^^^^^ unknown-word: middle`);
    });
});

describe('greys and copies', () => {
    /** A card with one more line, of which `word` is marked. */
    const card = (line: string, word = '', says = '') => `
laser shed { beam co2  power 45 W  spot 0.15 mm }
veneer maple { wood sugar-maple  thickness 0.6 mm }
recipe card "Card" {
  laser shed
  blank tray { of maple  size 90 x 60 mm }
  engrave face on tray { tone 80 %  art photo }
${line}
${word === '' ? '' : `${' '.repeat(line.indexOf(word))}${'^'.repeat(word.length)} ${says}`}
}`;
    it('are read', () =>
        expectMarked(
            `${card('art photo "p.png" { dither ordered  curve 0 % gives 0 %, 50 % gives 35 % }').slice(0, -1)}
engrave back on tray { tone 8 %  art photo at 1, 2 mm repeat 4 x 3 every 10 x 12 mm }
}`,
        ));
    it('know the ways of dithering', () =>
        expectMarked(card('art photo "p.png" { dither floyd }', 'floyd', 'unknown-word: floyd-steinberg')));
    it('of a curve are shares', () =>
        expectMarked(card('art photo "p.png" { curve 0 % gives 3 mm }', 'mm', 'wrong-unit: a percentage')));
    it('lie on one line without a step across it', async () => {
        const grid = (repeat: string) => `art photo "p.png" engrave back on tray { tone 9 %  art photo repeat ${repeat} }`;
        await expectMarked(card(grid('4 x 1 every 20 x 0 mm')));
        await expectMarked(card(grid('1 x 4 every 0 x 20 mm')));
        await expectMarked(card(grid('4 x 2 every 20 x 0.1 mm'), '0.1', 'unlikely-magnitude: unusually little'));
    });
    it('are counted', () =>
        expectMarked(
            card(
                'art photo "p.png" engrave back on tray { tone 9 %  art photo repeat 200 x 60 every 1 x 1 mm }',
                '200',
                'impossible-value: 12000 copies',
            ),
        ));
});

describe('a name that leads nowhere', () => {
    const board = (wood: string, says: string) => `
board b { wood ${wood}  thickness 10 mm  moisture 8 % }
               ${'^'.repeat(wood.length)} unknown-name: ${says}`;
    it('is answered with all that end alike, each to be taken by a fix', async () => {
        const findings = await expectMarked(board('oak', 'Did you mean `white-oak` or `red-oak`?'));
        expect(findings[0]?.fixes.map(({ title, preferred }) => [title, preferred])).toEqual([
            ['Change to `white-oak`', undefined],
            ['Change to `red-oak`', undefined],
        ]);
    });
    it('is answered with how to declare one, where none is like it', () =>
        expectMarked(board('holly', 'One of your own is declared with `wood holly { … }`.')));
    it('is answered with all there are, where they are few', () =>
        expectMarked(`
laser shed { beam ruby  power 45 W  spot 0.15 mm }
                  ^^^^ unknown-name: Known here: \`co2\`, \`blue-diode\`, \`fibre\`. One of your own`));
    it('is answered with the blank, where a step is named', async () => {
        const findings = await expectMarked(`
laser shed { beam co2  power 45 W  spot 0.15 mm }
board oak { wood white-oak  thickness 10 mm  moisture 8 % }
recipe card "Card" {
  laser shed
  art heron "heron.svg"
  blank tray { of oak  size 90 x 60 mm }
  engrave face on tray { tone 80 %  art heron }
  seal face with shellac
       ^^^^ unknown-name: did you mean \`tray\`?
}`);
        expect(findings[0]?.fixes[0]).toMatchObject({ title: 'Change to `tray`', preferred: true });
    });
});
