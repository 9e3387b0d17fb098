import { type LangiumDocument, URI, UriUtils } from 'langium';
import { beginRecipe } from '../../language/starting/begin';
import { colourOf, veneersFor } from '../../language/starting/picked-stock';
import { placeholderDrawing, placeholderPage } from '../../language/starting/placeholder-art';
import type { ArtSize } from '../../shared/art/art-size';
import { toBase64 } from '../../shared/quantity/base64';
import { type Message, phrase } from '../../shared/recipe/phrase';
import type { NewFile, NewRecipeAnswer, NewRecipeParams } from '../../shared/view/new-recipe';
import type { Asker } from '../engine/asker';
import { decodeText } from '../engine/decode-text';
import { largestArt, type ReadResult } from '../files/read-result';
import type { Source } from '../workshop/open-workshop';
import type { Workshop } from '../workshop/workshop';
import { tryOut } from './try-out';

export interface Shop {
    readonly workshop: Workshop;
    /** Everything that is known, built-in stock included. */
    readonly documents: readonly LangiumDocument[];
    readonly source: Source;
    readonly asker: Asker;
}

/** A recipe from what was chosen, tried out before it is written anywhere. */
export async function newRecipe(params: NewRecipeParams, shop: Shop): Promise<NewRecipeAnswer> {
    const folder = URI.parse(params.folder);
    const art =
        params.art === undefined ? await placeholder(params, folder, shop) : await readArt(URI.parse(params.art), shop.source);
    if ('problem' in art) return art;
    if (params.technique !== 'inlay' || params.veneer !== undefined) return tried(params, art, folder, shop);
    // Whether a veneer goes with the board (moisture, movement) is known once it has been tried.
    let best: NewRecipeAnswer | undefined;
    for (const veneer of veneersFor(colourOf(params.board, shop.documents), shop.documents)) {
        const answer = await tried({ ...params, veneer }, art, folder, shop);
        if ('problem' in answer) return answer;
        if (answer.findings.length === 0) return answer;
        if (best === undefined || 'problem' in best || answer.findings.length < best.findings.length) best = answer;
    }
    return best ?? { problem: phrase`There is no veneer to let in.` };
}

async function tried(params: NewRecipeParams, art: Placed, folder: URI, shop: Shop): Promise<NewRecipeAnswer> {
    const begun = beginRecipe(params, art, folder, shop.documents, shop.workshop.services);
    if ('problem' in begun) return begun;
    const address = (path: string): string => UriUtils.joinPath(folder, path).toString();
    const texts = new Map([...begun.texts].map(([path, text]) => [address(path), text]));
    const bytes = new Map(art.bytes === undefined ? [] : [[art.uri.toString(), art.bytes]]);
    const recipe = `${begun.name}.kerf`;
    const { text, findings } = await tryOut(address(recipe), texts, bytes, shop.source, shop.asker);
    const files: NewFile[] = [...begun.texts].map(([path, first]) => ({ path, text: path === recipe ? text : first }));
    if (art.file !== undefined) files.push({ path: UriUtils.relative(folder, art.uri), ...art.file });
    return { files, size: begun.size, findings: findings.map(({ message }) => message) };
}

type Placed = { readonly uri: URI; readonly size: ArtSize; readonly bytes?: Uint8Array; readonly file?: FileBody };
type FileBody = { readonly text: string } | { readonly base64: string };

/** A drawing or a picture of our own, to be drawn over, under a name that no file has yet. */
async function placeholder(
    { technique, title }: NewRecipeParams,
    folder: URI,
    { source, asker }: Shop,
): Promise<Required<Placed>> {
    const words = title.replaceAll(/[^\p{L}\p{N}-]+/gu, '-').replaceAll(/^-+|-+$/g, '');
    const base = words.toLowerCase() || 'art';
    if (technique === 'picture') {
        const png = await asker.ask({ do: 'placeholder' }, []);
        const { artSize } = await import('../workshop/look-at-art');
        const { columns = 0 } = artSize(png, () => undefined) ?? {};
        const size: ArtSize = { ...placeholderPage, kind: 'bitmap', physical: false, columns };
        return { uri: await freePlace(folder, base, 'png', source), size, bytes: png, file: { base64: toBase64(png) } };
    }
    const size: ArtSize = { ...placeholderPage, kind: 'vector', physical: true };
    const bytes = new TextEncoder().encode(placeholderDrawing);
    return { uri: await freePlace(folder, base, 'svg', source), size, bytes, file: { text: placeholderDrawing } };
}

async function freePlace(folder: URI, base: string, ending: string, { read }: Source): Promise<URI> {
    for (let count = 1; ; count += 1) {
        const uri = UriUtils.joinPath(folder, 'art', `${base}${count === 1 ? '' : `-${count}`}.${ending}`);
        const there = await read(uri.toString());
        // A name of which nothing can be learnt is taken as it is; writing never goes over a file.
        if (('problem' in there && there.problem !== 'too-large') || count > 99) return uri;
    }
}

async function readArt(uri: URI, { read }: Source): Promise<Placed | { readonly problem: Message }> {
    const name = UriUtils.basename(uri);
    const result = await read(uri.toString());
    if ('problem' in result) return { problem: phrase`${name} ${why[result.problem]()}.` };
    const { artSize } = await import('../workshop/look-at-art');
    const size = artSize(result.bytes, () => {
        const decoded = decodeText(result.bytes);
        return 'text' in decoded ? decoded.text : undefined;
    });
    return size === undefined
        ? { problem: phrase`${name} is neither a drawing (SVG) nor a picture (PNG, JPEG) that says how large it is.` }
        : { uri, size };
}

const why: Readonly<Record<Extract<ReadResult, { problem: string }>['problem'], () => Message>> = {
    missing: () => phrase`is not there`,
    outside: () => phrase`lies outside the workspace; art is read only from inside it`,
    'too-large': () => phrase`is larger than the ${largestArt / 1024 ** 2} MB that are read as art`,
    unreadable: () => phrase`cannot be read`,
};
