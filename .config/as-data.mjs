import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { build } from 'esbuild';

/**
 * Puts modules that are only data into a bundle as such, so that what the data stands beside stays out of it:
 * the pages of the rules without the rules, the grammar without its layout and with what is read off it, the built-in stock with the
 * words of its sources once, currencies without the countries that pay with them.
 */
export const asData = {
    name: 'as-data',
    setup({ onLoad, onResolve }) {
        onResolve({ filter: /^unpack$/ }, ({ path }) => ({ path, namespace: 'as-data' }));
        onLoad({ filter: /^unpack$/, namespace: 'as-data' }, () => ({ contents: unpackModule, loader: 'js' }));
        let pages;
        let words;
        let ids;
        onLoad({ filter: /[\\/]server[\\/]all-pages\.ts$/ }, async ({ path }) => {
            pages ??= exportsOf(path);
            return { contents: asModule(await pages), loader: 'js' };
        });
        onLoad({ filter: /[\\/]language[\\/]findings[\\/]text-rule-ids\.ts$/ }, async ({ path }) => {
            ids ??= exportsOf(path);
            const { textRuleIds } = await ids;
            return { contents: `export const textRuleIds = ${JSON.stringify(textRuleIds.join(' '))}.split(' ');`, loader: 'js' };
        });
        onLoad({ filter: /[\\/]language[\\/]parsing[\\/]name-taking-words\.ts$/ }, async ({ path }) => {
            words ??= exportsOf(path);
            const { nameTakingWords } = await words;
            return {
                contents: `export const nameTakingWords = ${JSON.stringify(nameTakingWords.join(' '))}.split(' ');`,
                loader: 'js',
            };
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
            return { contents: withUnpack(text.replace(/`\{[\s\S]*\}`/, compact)), loader: 'ts' };
        });
        onLoad({ filter: /[\\/]language[\\/]stock[\\/][\w-]+\.kerf$/ }, async ({ path }) => {
            const text = await readFile(path, 'utf8');
            return { contents: withUnpack(`export default ${unpacked(packed(text.match(WORDS)))};`), loader: 'js' };
        });
    },
};

/** Data as a module: of a list of things the names of their fields once, and words that come again and again packed. */
function asModule(data) {
    return withUnpack(
        [
            'const things=([names,rows])=>rows.map((row)=>Object.fromEntries(names.flatMap((name,i)=>row[i]===0?[]:[[name,row[i]]])));',
            ...Object.entries(data).map(
                ([name, all]) =>
                    `export const ${name}=things(JSON.parse(${unpacked(packed(JSON.stringify(table(all)).match(WORDS)))}));`,
            ),
        ].join('\n'),
    );
}

/** The texts of a JSON, and whatever stands between them sign by sign. */
const TEXTS = /"(?:[^"\\]|\\.)*"|[^"]/g;

/** Words of a text with the space before them, and signs one by one. */
const WORDS = / ?[\p{L}\p{N}]+|[\s\S]/gu;

/** Things of like fields as rows below the names of the fields; 0 stands where one has not got a field. */
function table(things) {
    const names = [...new Set(things.flatMap((thing) => Object.keys(thing)))];
    return [names, things.map((thing) => names.map((name) => thing[name] ?? 0))];
}

/**
 * The grammar is JSON in a template literal, nine tenths of it the same few pieces again and again. They are written once: the
 * commonest pairs of pieces get a name of two signs each, pair by pair (byte pair encoding), and the names are put out again at the start.
 */
function compact(literal) {
    return unpacked(packed(JSON.stringify(JSON.parse(new Function(`return ${literal}`)())).match(TEXTS)));
}

/** The expression that gives a text again, in a module that has `unpack`. */
function unpacked({ text, pairs, firsts }) {
    return `unpack(${JSON.stringify(text)}, ${JSON.stringify(pairs)}, '${firsts}')`;
}

function withUnpack(contents) {
    return `import { unpack } from 'unpack';\n${contents}`;
}

/** A name is one of these and one of the next: of the first, those that the text itself does not hold. No quotes and backslashes: those take two signs. */
const FIRSTS = ['~', '&', '|', '^', '$', '`'];
const NAMES = 'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789!#%&()*+,-./:;<=>?@[]^_{|} ~$`';

/** Puts the pieces in the place of their names; once in a bundle, for all that is packed there. */
const unpackModule = `const seconds = ${JSON.stringify(NAMES)};
export function unpack(packed, pairs, firsts) {
    const known = {};
    const name = new RegExp('[' + firsts.replace('^', '\\\\^') + '][^]', 'g');
    const piece = ([first, second]) => pairs[firsts.indexOf(first) * seconds.length + seconds.indexOf(second)];
    const whole = (text) => text.replace(name, (each) => (known[each] ??= whole(piece(each))));
    return whole(packed);
}`;

function packed(all) {
    const firsts = FIRSTS.filter((sign) => !all.some((piece) => piece.includes(sign)));
    if (firsts.length === 0) throw new Error(`There is ${FIRSTS.join(' and ')} in it, by which pieces are named.`);
    let pieces = all;
    const pairs = [];
    for (const name of firsts.flatMap((first) => [...NAMES].map((second) => first + second))) {
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
                joined.push(name);
                i++;
            } else joined.push(pieces[i]);
        }
        pieces = joined;
    }
    return { text: pieces.join(''), pairs, firsts: firsts.join('') };
}

async function exportsOf(path) {
    const { outputFiles } = await build({ entryPoints: [path], bundle: true, format: 'cjs', platform: 'node', write: false });
    const made = { exports: {} };
    new Function('module', 'exports', 'require', outputFiles[0].text)(made, made.exports, createRequire(import.meta.url));
    return { ...made.exports };
}
