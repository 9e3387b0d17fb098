import { type LangiumDocument, type URI, UriUtils } from 'langium';
import type { ArtSize } from '../../shared/art/art-size';
import { type Message, phrase } from '../../shared/recipe/phrase';
import type { NewRecipeParams } from '../../shared/view/new-recipe';
import { isBuiltIn } from '../built-in';
import * as ast from '../generated/ast';
import type { KerfServices } from '../services';
import { freeName } from './free-name';
import { inSight, neededFiles } from './needed-files';
import { pickedResin } from './picked-resin';
import { type PickedSheet, type PickedStock, pickStock } from './picked-stock';
import { declared } from './shop-here';
import { sizesOf } from './sizes';
import type { SizeInMm, Start } from './start';
import { startText } from './start-text';
import { suppliesOf } from './supplies';

const workshopFile = 'workshop.kerf';

export interface Begun {
    readonly name: string;
    /** Texts of the files that are to be written, by their names in the folder; the recipe first. */
    readonly texts: ReadonlyMap<string, string>;
    readonly size: SizeInMm;
}

/**
 * A new recipe from what was chosen. Nothing of it is tried out here.
 * @param art address of the art and what it is like; the address need not exist yet
 */
export function beginRecipe(
    params: NewRecipeParams,
    art: { readonly uri: URI; readonly size: ArtSize },
    folder: URI,
    documents: readonly LangiumDocument[],
    services: KerfServices,
): Begun | { readonly problem: Message } {
    const { technique } = params;
    if (technique === 'picture' && art.size.kind === 'vector')
        return { problem: phrase`A picture in greys is burnt from a PNG or JPEG; ${UriUtils.basename(art.uri)} is a drawing.` };
    const names = new Set(documents.flatMap(namesIn));
    const shelf = { documents, names, services };
    const picked = pickStock(params, shelf);
    if ('problem' in picked) return picked;
    const { board, laser, veneer } = picked;

    const resin = pickedResin(params, shelf);
    const nodes = [board.node, laser.node, veneer?.node, resin?.node].filter((node) => node !== undefined);
    const files = neededFiles(nodes, documents, services);
    const used = files.map((file) => UriUtils.relative(folder, file.uri));
    const blocks = [laser.text, board.text, veneer?.text, resin?.text].filter((text) => text !== undefined);
    const isNewFile =
        blocks.length > 0 && !documents.some(({ uri }) => UriUtils.equals(uri, UriUtils.joinPath(folder, workshopFile)));
    const supplies = suppliesOf(
        [...inSight(files, services), ...documents.filter(({ uri }) => isBuiltIn(uri.toString()))],
        board.wood?.colour ?? '',
    );
    const sizes = sizesOf(art.size, { board: board.bought, veneer: veneer?.bought, field: laser.field }, params.size);
    const name = freeName(params.title, names, 'piece', services);
    const artName = freeName(UriUtils.basename(art.uri).replace(/\.[^.]*$/, ''), own, 'art', services);
    const start: Start = {
        technique,
        name,
        title: params.title.trim() === '' ? name : params.title,
        uses: isNewFile ? [workshopFile, ...used] : used,
        stock: isNewFile ? [] : blocks,
        laser: laser.name,
        board: {
            name: board.name,
            bleeds: board.wood?.bleeds ?? true,
            ...(board.thickness === undefined ? {} : { thinnest: board.thickness.value - board.thickness.tolerance }),
        },
        size: sizes.blank,
        art: {
            name: artName,
            path: UriUtils.relative(folder, art.uri),
            bitmap: art.size.kind === 'bitmap',
            page: sizes.page,
            sized: sizes.sized,
        },
        remarks: unmeasured(picked, documents),
        ...supplies,
        ...(resin === undefined ? {} : { resin: resin.pour }),
        ...(veneer === undefined
            ? {}
            : { inlay: { veneer: { name: veneer.name, thickness: veneer.thickness?.value ?? 0.6 }, glue: supplies.glue } }),
    };
    const texts = new Map([[`${name}.kerf`, startText(start)]]);
    if (isNewFile) texts.set(workshopFile, `${blocks.join('\n\n')}\n`);
    return { name, texts, size: sizes.blank };
}

/** A remark for each sheet of which no coupon has been burnt on the laser. */
function unmeasured({ board, laser, veneer }: PickedStock, documents: readonly LangiumDocument[]): string[] {
    const coupons = declared(documents, ast.isCoupon);
    const isMeasured = ({ node }: PickedSheet): boolean =>
        node !== undefined && coupons.some((coupon) => coupon.sheet?.ref === node && coupon.laser?.ref === laser.node);
    return [board, ...(veneer === undefined ? [] : [veneer])]
        .filter((sheet) => !isMeasured(sheet))
        .map(
            ({ name }) =>
                `No coupon of ${name} has been burnt on ${laser.name} yet, so its settings are guesses: Make Coupon tells how.`,
        );
}

/** Names of the blanks and steps that a new recipe has itself. */
const own: ReadonlySet<string> = new Set(['piece', 'inset', 'pocket', 'relief', 'drawing']);

function namesIn({ parseResult: { value } }: LangiumDocument): string[] {
    return ast.isFile(value) ? value.entries.flatMap((entry) => ('name' in entry && entry.name ? [entry.name] : [])) : [];
}
