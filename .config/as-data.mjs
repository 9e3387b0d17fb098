import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { build } from 'esbuild';

/**
 * Puts modules that are only data into a bundle as such, so that what the data stands beside stays out of it:
 * the pages of the rules without the rules, the grammar without its layout, currencies without the countries that pay with them.
 */
export const asData = {
    name: 'as-data',
    setup({ onLoad }) {
        let pages;
        onLoad({ filter: /[\\/]server[\\/]all-pages\.ts$/ }, async ({ path }) => {
            pages ??= exportsOf(path);
            return { contents: asModule(await pages), loader: 'js' };
        });
        onLoad({ filter: /[\\/]currency-codes[\\/]data\.js$/ }, ({ path }) => {
            const list = createRequire(import.meta.url)(path);
            // Its three keys are written once, not with each currency.
            const rows = JSON.stringify(list.map(({ code, digits, currency }) => [code, digits, currency]));
            const named = '([code, digits, currency]) => ({ code, digits, currency })';
            return { contents: `module.exports = ${rows}.map(${named});`, loader: 'js' };
        });
        onLoad({ filter: /[\\/]language[\\/]generated[\\/]grammar\.ts$/ }, async ({ path }) => {
            const text = await readFile(path, 'utf8');
            return { contents: text.replace(/`\{[\s\S]*\}`/, compact), loader: 'ts' };
        });
    },
};

/**
 * Data as a module in which each text and list that comes again and again is written once, and of a list of things the names of their
 * fields: most rules are of one severity and one source.
 */
function asModule(data) {
    const counts = new Map();
    const count = (value) => {
        const text = JSON.stringify(value);
        if (isRepeatable(value)) counts.set(text, (counts.get(text) ?? 0) + 1);
        else if (typeof value === 'object' && value !== null) Object.values(value).forEach(count);
    };
    count(data);
    const names = new Map();
    for (const [text, times] of counts)
        if (text.length > 8 && times > (text.length > 30 ? 1 : 2)) names.set(text, `once${names.size}`);
    const write = (value) => {
        const text = JSON.stringify(value);
        if (isRepeatable(value)) return names.get(text) ?? text;
        if (Array.isArray(value)) return table(value, write);
        if (typeof value !== 'object' || value === null) return text;
        return `{${Object.entries(value).map(([key, each]) => `${JSON.stringify(key)}:${write(each)}`)}}`;
    };
    const constants = [...names].map(([text, name]) => `const ${name}=${text};`);
    return [THINGS, ...constants, ...Object.entries(data).map(([name, value]) => `export const ${name}=${write(value)};`)].join(
        '\n',
    );
}

const THINGS =
    'const things=(names,rows)=>rows.map((row)=>Object.fromEntries(names.flatMap((name,i)=>row[i]===0?[]:[[name,row[i]]])));';

/** Things of like fields as rows below the names of the fields; 0 stands where one has not got a field. */
function table(things, write) {
    const names = [...new Set(things.flatMap((thing) => Object.keys(thing)))];
    const rows = things.map((thing) => `[${names.map((name) => (name in thing ? write(thing[name]) : 0)).join()}]`);
    return `things(${JSON.stringify(names)},[${rows.join()}])`;
}

function isRepeatable(value) {
    return typeof value === 'string' || (Array.isArray(value) && value.every((each) => typeof each === 'string'));
}

/**
 * The grammar is JSON in a template literal, nine tenths of it the same few pieces again and again. They are written once: the
 * commonest pairs of pieces get a name of two signs each, pair by pair (byte pair encoding), and the names are put out again at the start.
 */
function compact(literal) {
    const { text, pairs } = packed(JSON.stringify(JSON.parse(new Function(`return ${literal}`)())));
    const unpack = `(packed, pairs) => pairs.reduceRight((text, pair, i) => text.split('~' + '${NAMES}'[i]).join(pair), packed)`;
    return `(${unpack})(${JSON.stringify(text)}, ${JSON.stringify(pairs)})`;
}

const NAMES = 'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789!#%&()*+,-./:;<=>?@[]^_{|}';

function packed(json) {
    if (json.includes('~')) throw new Error('The grammar holds a ~, by which its pieces are named.');
    let pieces = json.match(/"(?:[^"\\]|\\.)*"|[^"]/g);
    const pairs = [];
    for (const name of NAMES) {
        const saved = new Map();
        for (let i = 1; i < pieces.length; i++) {
            const pair = pieces[i - 1] + pieces[i];
            saved.set(pair, (saved.get(pair) ?? -pair.length) + pair.length - 2);
        }
        const [best] = [...saved].reduce((most, each) => (each[1] > most[1] ? each : most), ['', 0]);
        if (best === '') break;
        pairs.push(best);
        const joined = [];
        for (let i = 0; i < pieces.length; i++) {
            if (pieces[i] + (pieces[i + 1] ?? '') === best && i + 1 < pieces.length) {
                joined.push(`~${name}`);
                i++;
            } else joined.push(pieces[i]);
        }
        pieces = joined;
    }
    return { text: pieces.join(''), pairs };
}

async function exportsOf(path) {
    const { outputFiles } = await build({ entryPoints: [path], bundle: true, format: 'esm', platform: 'node', write: false });
    const { ...data } = await import(`data:text/javascript;base64,${Buffer.from(outputFiles[0].contents).toString('base64')}`);
    return data;
}
