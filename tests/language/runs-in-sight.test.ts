import { type LangiumDocument, URI } from 'langium';
import { describe, expect, it } from 'vitest';
import { lowerFile } from '../../language/lowering/lower-file';
import { textFindings } from '../../language/text-findings';
import type { Recipe } from '../../shared/recipe/recipe';
import { open, services } from './services';

const shop = `
laser shed { beam co2  power 45 W  spot 0.15 mm }
board walnut-12 { wood black-walnut  thickness 12 mm }
`;
const tray = (name: string): string => `use "shop.kerf"
recipe ${name} {
  revision 3
  laser shed
  blank tray { of walnut-12  size 300 x 200 mm  grain along width }
  engrave pocket on tray { circle 80 mm  depth 0.5 mm  pitch 0.1 mm  air off }
}
`;
const run = (name: string, day: string, depth = 0.48): string =>
    `run ${name} ${day} { revision 3  laser shed  pocket of walnut-12 80 % at 400 mm/s x 2 pitch 0.1 mm depth ${depth} mm }\n`;

let folders = 0;
/** A folder of its own with a shop and a recipe `tray`. */
async function folder(): Promise<{ at: string; home: LangiumDocument; recipe: () => Recipe }> {
    const at = `file:///runs-${++folders}`;
    await open(shop, `${at}/shop.kerf`);
    const home = await open(tray('tray'), `${at}/tray.kerf`);
    return { at, home, recipe: () => lowerFile(home, services)[0]! };
}

const daysOf = ({ runs }: Recipe): string[] => runs.map(({ date }) => date.value);
const saidOf = (document: LangiumDocument): string[] => textFindings(document, services).map(({ rule }) => rule);

describe('runs in files of their own', () => {
    it('count beside their recipe and below it, without any use, in the order of their days', async () => {
        const { at, recipe } = await folder();
        const later = await open(run('tray', '2026-03-02'), `${at}/runs/b.kerf`);
        await open(run('tray', '2026-03-01'), `${at}/runs/old/a.kerf`);
        await open(`use "tray.kerf"\n${run('tray', '2026-02-01')}`, `${at}/beside.kerf`);
        expect(saidOf(later)).toEqual([]);
        expect(daysOf(recipe())).toEqual(['2026-02-01', '2026-03-01', '2026-03-02']);
        expect(recipe().runs[2]).toMatchObject({
            laser: { name: 'shed' },
            burnt: [{ depth: { value: 0.48 }, sheet: 'walnut-12' }],
        });
    });

    it('count for the recipe that is nearest, and for no other of that name', async () => {
        const { at, recipe } = await folder();
        await open(shop, `${at}/gifts/shop.kerf`);
        const near = await open(tray('tray'), `${at}/gifts/tray.kerf`);
        await open(run('tray', '2026-03-01'), `${at}/gifts/runs/a.kerf`);
        expect(daysOf(lowerFile(near, services)[0]!)).toEqual(['2026-03-01']);
        expect(daysOf(recipe())).toEqual([]);
    });

    it('measured in a board of the same name in another file are not taken for those of the recipe’s', async () => {
        const { at, recipe } = await folder();
        const other = 'board walnut-12 { wood black-walnut  thickness 9 mm }\n';
        await open(other, `${at}/old/shop.kerf`);
        await open(run('tray', '2026-03-01', 0.41), `${at}/runs/a.kerf`);
        await open(`use "../old/shop.kerf"\n${run('tray', '2026-03-02', 0.92)}`, `${at}/runs/b.kerf`);
        await open(`${other}${run('tray', '2026-03-03', 0.93)}`, `${at}/runs/c.kerf`);
        expect(daysOf(recipe())).toEqual(['2026-03-01', '2026-03-02', '2026-03-03']);
        expect(recipe().measured.map(({ depth }) => depth)).toEqual([0.41]);
    });

    it('are read between the markers of a merge as one finding, and the rest of the file counts', async () => {
        const { at, recipe } = await folder();
        const side = (depth: number) => run('tray', '2026-03-02', depth);
        const text = `${run('tray', '2026-03-01')}<<<<<<< HEAD\n${side(0.4)}=======\n${side(0.5)}>>>>>>> other\n`;
        const file = await open(text, `${at}/runs/a.kerf`);
        const findings = textFindings(file, services);
        expect(findings.map(({ rule }) => rule)).toEqual(['syntax']);
        expect(findings[0]?.fixes).toHaveLength(3);
        expect(daysOf(recipe())).toEqual(['2026-03-01']);
        const within = `run tray 2026-03-02 {\n  revision 3\n<<<<<<< HEAD\n  note "a"\n=======\n  note "b"\n>>>>>>> other\n}\n`;
        const inside = await open(within, `${at}/runs/b.kerf`);
        expect(saidOf(inside)).toEqual(['syntax']);
        expect(daysOf(recipe())).toEqual(['2026-03-01', '2026-03-02']);
    });

    it('are counted and left out again as the files change', async () => {
        const { at, home, recipe } = await folder();
        const builder = services.shared.workspace.DocumentBuilder;
        const documents = services.shared.workspace.LangiumDocuments;
        const file = await open('', `${at}/runs/a.kerf`);
        expect(daysOf(recipe())).toEqual([]);
        const write = async (uri: string, text: string): Promise<LangiumDocument> => open(text, uri);
        await write(file.uri.toString(), run('tray', '2026-03-01'));
        expect(daysOf(recipe())).toEqual(['2026-03-01']);
        // The recipe is renamed: the run's name leads nowhere now, and says so.
        await builder.update([], [home.uri]);
        const renamed = await write(`${at}/tray.kerf`, tray('dish'));
        const gone = documents.getDocument(file.uri)!;
        await builder.update([], []);
        expect(saidOf(gone)).toEqual(['unknown-name']);
        expect(daysOf(lowerFile(renamed, services)[0]!)).toEqual([]);
        const back = await write(`${at}/tray.kerf`, tray('tray'));
        expect(saidOf(gone)).toEqual([]);
        expect(daysOf(lowerFile(back, services)[0]!)).toEqual(['2026-03-01']);
        await builder.update([], [URI.parse(`${at}/runs/a.kerf`)]);
        expect(daysOf(lowerFile(back, services)[0]!)).toEqual([]);
    });

    it('do not count for a recipe in another folder', async () => {
        const { at, recipe } = await folder();
        const elsewhere = await open(
            `use "${'../'}runs-${folders}/tray.kerf"\n${run('tray', '2026-03-01')}`,
            'file:///diary/a.kerf',
        );
        expect(at).toContain(`runs-${folders}`);
        expect(daysOf(recipe())).toEqual([]);
        expect(saidOf(elsewhere)).toEqual(['run-elsewhere']);
    });
});

describe('what is said of runs', () => {
    const messagesOf = (document: LangiumDocument): string[] =>
        textFindings(document, services).map(({ rule, message }) => `${rule}: ${message}`);

    it('two of one day that say the same, in one file or in two, at the later one', async () => {
        const { at } = await folder();
        const first = await open(run('tray', '2026-03-01'), `${at}/runs/a.kerf`);
        const other = await open(run('tray', '2026-03-01', 0.5), `${at}/runs/b.kerf`);
        const copy = await open(`// copied\n${run('tray', '2026-03-01').replaceAll('  ', '\n   ')}`, `${at}/runs/c.kerf`);
        expect([first, other, copy].map(saidOf)).toEqual([[], [], ['run-twice']]);
        // Once the first is another, the copy is the only one of its kind.
        await open(run('tray', '2026-03-01', 0.47), `${at}/runs/a.kerf`);
        expect(saidOf(copy)).toEqual([]);
    });

    it('a day that is still to come, and none of today', async () => {
        const { at } = await folder();
        expect(messagesOf(await open(run('tray', '2026-12-01'), `${at}/runs/a.kerf`))).toEqual([
            'run-ahead: 2026-12-01 is still to come: today is 2026-11-30. Write the day on which it was made.',
        ]);
        expect(saidOf(await open(run('tray', '2026-11-30'), `${at}/runs/b.kerf`))).toEqual([]);
    });

    it('two depths of one step on one board, and not of one on two boards', async () => {
        const { at } = await folder();
        const twice = (second: string): string =>
            `run tray 2026-03-01 { revision 3  pocket of walnut-12 depth 0.48 mm  ${second} }\n`;
        const [said] = messagesOf(await open(twice('pocket of walnut-12 depth 0.52 mm'), `${at}/runs/a.kerf`));
        expect(said).toContain('run-figures: `pocket` has two figures for its depth in one run: 0.48 mm and 0.52 mm.');
        expect(saidOf(await open(twice('pocket of walnut-12 width 80 mm'), `${at}/runs/b.kerf`))).toEqual([]);
        const ash = '\nboard ash-12 { wood white-ash  thickness 12 mm }\n';
        expect(saidOf(await open(ash + twice('pocket of ash-12 depth 0.52 mm'), `${at}/runs/c.kerf`))).toEqual([]);
    });

    it('a depth of a step that is burnt to a tone, which the fit leaves out', async () => {
        const { at, home, recipe } = await folder();
        const file = await open(run('tray', '2026-03-01'), `${at}/runs/a.kerf`);
        expect(recipe().measured).toHaveLength(1);
        const toned = await open(tray('tray').replace('depth 0.5 mm', 'tone 60 %'), home.uri.toString());
        expect(saidOf(file)).toEqual(['run-depth-of-tone']);
        const now = lowerFile(toned, services)[0]!;
        expect(now.runs).toHaveLength(1);
        expect(now.measured).toEqual([]);
    });

    it('a recipe that two files of one folder have', async () => {
        const { at } = await folder();
        await open(tray('tray'), `${at}/other.kerf`);
        expect(saidOf(await open(run('tray', '2026-03-01'), `${at}/runs/a.kerf`))).toEqual(['duplicate-name']);
        expect(saidOf(await open(`use "../tray.kerf"\n${run('tray', '2026-03-01')}`, `${at}/runs/b.kerf`))).toEqual([]);
    });
});
