/**
 * As an editor has it: both servers in processes of their own, built as they are shipped, from the text going out to
 * its findings coming back. Beside ours a server around the JSON language service with a schema. Run by tests/speed/run.mjs.
 */
import { copyFileSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { Editor } from './editor';
import { recipeText, shopText, toJson } from './language-texts';
import { report, reportLoad, type Spread, spread } from './measure';

/** Long enough that no edit counts as part of a burst, and about as fast as anybody types. */
const betweenKeys = 80;

const root = path.resolve(fileURLToPath(import.meta.url), '../../../..');
const out = mkdtempSync(path.join(root, 'tests/speed/out-'));
const shop = path.join(out, 'shop');
putArt(shop);
reportLoad();
try {
    const [ours, peers] = await builtServers();
    await coldStart(ours, peers);
    for (const [what, size] of [
        ['300 lines', recipeText(300, 'lines')],
        ['20 kB', recipeText(20_000, 'characters')],
        ['100 kB', recipeText(100_000, 'characters')],
    ] as const) {
        await oneFile(what, shopText + size, ours, peers);
    }
    await manyFiles(ours, 'each complete', 'walnut-12');
    await manyFiles(ours, 'each with a name that leads nowhere', 'walnut-13');
} finally {
    rmSync(out, { recursive: true, force: true });
}

async function builtServers(): Promise<[string, string]> {
    const { bundlesFor } = await import(pathToFileURL(path.join(root, '.config/bundles.mjs')).href);
    for (const name of ['server', 'worker']) {
        const bundle = bundlesFor(true).find(({ outfile }: { outfile: string }) => outfile === `dist/${name}.cjs`);
        await build({ ...bundle, outfile: path.join(out, `${name}.cjs`) });
    }
    const json = path.join(out, 'json-server.cjs');
    await build({
        entryPoints: [path.join(root, 'tests/speed/json-server.ts')],
        outfile: json,
        bundle: true,
        minify: true,
        platform: 'node',
        // Its CommonJS builds ask for their parts in a way no bundler can follow.
        mainFields: ['module', 'main'],
        logLevel: 'error',
    });
    return [path.join(out, 'server.cjs'), json];
}

function putArt(folder: string): void {
    mkdirSync(path.join(folder, 'art'), { recursive: true });
    copyFileSync(path.join(root, 'samples/art/heron.svg'), path.join(folder, 'art/heron.svg'));
}

function uriIn(folder: string, name: string): string {
    return pathToFileURL(path.join(folder, name)).toString();
}

/** From starting the process to the first findings of an open file. */
async function coldStart(ours: string, peers: string): Promise<void> {
    const start = async (server: string, name: string, text: string): Promise<Spread> => {
        const uri = uriIn(shop, name);
        return spread(async () => {
            const editor = await Editor.start(server, pathToFileURL(shop).toString());
            await editor.show(uri, path.extname(name).slice(1), text);
            return () => editor.stop();
        }, 9);
    };
    const text = shopText + recipeText(300, 'lines');
    console.log('\nCold start to the first findings of 300 lines');
    const json = await start(peers, 'a.json', toJson(text.length));
    line('recipe', await start(ours, 'a.kerf', text), json);
    line('  JSON', json);
}

async function oneFile(what: string, text: string, ours: string, peers: string): Promise<void> {
    const own = await times(ours, uriIn(shop, 'a.kerf'), text, text.lastIndexOf('depth 0.5') + 'depth '.length, 'passes 3');
    const sameSize = toJson(text.length);
    const depth = sameSize.lastIndexOf('"depth":') + '"depth": '.length;
    const peer = await times(peers, uriIn(shop, 'a.json'), sameSize, depth, '"passes"');
    console.log(`\n${what}: recipe of ${(text.length / 1000).toFixed(0)} kB, JSON of ${(sameSize.length / 1000).toFixed(0)} kB`);
    for (const part of ['edit', 'completion', 'hover'] as const) {
        line(`${part} in the recipe`, own[part], peer[part]);
        line(`  ${part} in JSON`, peer[part]);
    }
}

async function times(
    server: string,
    uri: string,
    text: string,
    depth: number,
    word: string,
): Promise<Record<'edit' | 'completion' | 'hover', Spread>> {
    const editor = await Editor.start(server, pathToFileURL(shop).toString());
    const document = await editor.show(uri, path.extname(uri).slice(1), text);
    const edit = await spread(async (run) => {
        await editor.write(uri, depth, 3, `0.${5 + (run & 1)}`);
        return pause;
    }, 60);
    const at = document.positionAt(text.lastIndexOf(word));
    const completion = await spread(() => editor.ask('textDocument/completion', uri, at));
    const hover = await spread(() => editor.ask('textDocument/hover', uri, at));
    await editor.stop();
    return { edit, completion, hover };
}

function pause(): Promise<void> {
    return new Promise((resolve) => setTimeout(resolve, betweenKeys));
}

/** One of a thousand files is typed in, and then the one that all of them use. */
async function manyFiles(server: string, what: string, board: string): Promise<void> {
    const folder = path.join(out, what.replaceAll(' ', '-'));
    const one = recipeText(1, 'lines').replace('of walnut-12', `of ${board}`);
    putArt(folder);
    writeFileSync(path.join(folder, 'shop.kerf'), shopText);
    for (let index = 0; index < 1000; index++) {
        writeFileSync(path.join(folder, `r${index}.kerf`), `use "shop.kerf"\n${one.replace('tray-0', `tray-${index}`)}`);
    }
    const began = performance.now();
    const editor = await Editor.start(server, pathToFileURL(folder).toString());
    const uri = uriIn(folder, 'r500.kerf');
    const text = `use "shop.kerf"\n${one.replace('tray-0', 'tray-500')}`;
    await editor.show(uri, 'kerfbook', text);
    console.log(`\n1000 files, ${what}`);
    report('start to the findings of the open one', performance.now() - began);
    const depth = text.lastIndexOf('depth 0.5') + 'depth '.length;
    const edit = await spread(async (run) => {
        await editor.write(uri, depth, 3, `0.${5 + (run & 1)}`);
        return pause;
    }, 40);
    line('edit of one', edit);
    const used = uriIn(folder, 'shop.kerf');
    await editor.show(used, 'kerfbook', shopText);
    const power = shopText.indexOf('45 W');
    const shared = await spread(async (run) => {
        await editor.write(used, power, 2, String(45 + (run & 1)));
        return pause;
    }, 10);
    line('edit of the one that all use', shared);
    await editor.stop();
}

function line(what: string, { median, p95 }: Spread, peer?: Spread): void {
    const ratio = peer === undefined ? [] : [`${(median / peer.median).toFixed(1)} times the JSON server's`];
    report(what, median, `p95 ${p95.toFixed(1)} ms`, ...ratio);
}
