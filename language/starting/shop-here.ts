import { AstUtils, type LangiumDocument, UriUtils } from 'langium';
import { compareText } from '../../shared/quantity/compare-text';
import { showLength, showNumber } from '../../shared/quantity/show';
import type { Laser, Sheet } from '../../shared/recipe/stock';
import type { LaserChoice, NewRecipeChoices, StockChoice } from '../../shared/view/new-recipe';
import { isBuiltIn } from '../built-in';
import * as ast from '../generated/ast';
import { resinOf } from '../lowering/fluids';
import { beamOf, laserOf, sheetOf } from '../lowering/stock';
import { isPoured } from './poured';

/** Everything of a kind that some of the documents declare. */
export function declared<T extends ast.Entry>(documents: readonly LangiumDocument[], is: (node: unknown) => node is T): T[] {
    return documents.flatMap(({ parseResult: { value } }) => (ast.isFile(value) ? value.entries.filter(is) : []));
}

export function fileOf(node: ast.Entry): string {
    return AstUtils.getDocument(node).uri.toString();
}

/** Files with recipes in them: stock that stands there is seldom meant for another piece. */
export function filesOfPieces(documents: readonly LangiumDocument[]): ReadonlySet<string> {
    return new Set(declared(documents, ast.isRecipe).map(fileOf));
}

/** What a new recipe can be made of: the shop's own, then what is built in. */
export function choicesOf(documents: readonly LangiumDocument[]): NewRecipeChoices {
    // By address: files come to be known in the order in which the disk answers, and a list should not change with that.
    const own = documents
        .filter(({ uri }) => !isBuiltIn(uri.toString()))
        .toSorted((a, b) => compareText(a.uri.toString(), b.uri.toString()));
    const builtIn = documents.filter(({ uri }) => isBuiltIn(uri.toString()));
    const coupons = declared(own, ast.isCoupon);
    const ofPieces = filesOfPieces(own);
    const rankOf = ({ coupons: measured, file = '' }: StockChoice): number =>
        2 * Number(measured.length === 0) + Number(ofPieces.has(file));
    const sheets = (is: (node: unknown) => node is ast.Sheet & ast.Entry, made: string): StockChoice[] => [
        ...declared(own, is)
            .filter(({ name }) => name)
            .map((node) => ({
                name: node.name,
                file: fileOf(node),
                detail: [sheetWords(sheetOf(node)), UriUtils.basename(AstUtils.getDocument(node).uri)].join(' · '),
                coupons: coupons.flatMap(({ sheet, laser }) => (sheet?.ref === node && laser?.ref ? [laser.ref.name] : [])),
            }))
            // What was measured is planned best.
            .toSorted((a, b) => rankOf(a) - rankOf(b)),
        ...declared(builtIn, ast.isWood).map(({ name }) => ({ name, detail: made, coupons: [] })),
    ];
    return {
        boards: sheets(ast.isBoard, 'a new board of this wood'),
        veneers: sheets(ast.isVeneer, 'a new veneer of this wood'),
        resins: declared(own, ast.isResin)
            .filter(({ name }) => name)
            .map((node) => ({ node, resin: resinOf(node) }))
            .filter(({ resin }) => isPoured(resin))
            .map(({ node, resin: { name, kind, colour } }) => ({
                name,
                file: fileOf(node),
                detail: [kind, UriUtils.basename(AstUtils.getDocument(node).uri)].filter(Boolean).join(' · '),
                colour,
            })),
        lasers: [
            ...declared(own, ast.isLaser)
                .filter(({ name }) => name)
                .map((node) => laserChoice(laserOf(node), node)),
            ...declared(builtIn, ast.isBeam).map((node) => {
                const { foilStops } = beamOf(node);
                return { name: node.name, detail: 'a new laser of this kind, with usual figures', foilStops };
            }),
        ],
    };
}

function laserChoice(laser: Laser, node: ast.Laser): LaserChoice {
    const figures = [
        laser.beam?.name,
        laser.power === undefined ? undefined : `${showNumber(laser.power.value)} W`,
        laser.field === undefined
            ? undefined
            : `${showLength(laser.field.width.value)} x ${showLength(laser.field.height.value)}`,
    ];
    return {
        name: node.name,
        file: fileOf(node),
        detail: [figures.filter((each) => each !== undefined).join(', '), UriUtils.basename(AstUtils.getDocument(node).uri)].join(
            ' · ',
        ),
        foilStops: laser.beam?.foilStops ?? true,
    };
}

function sheetWords({ wood, thickness }: Sheet): string {
    return [wood?.name, thickness === undefined ? undefined : showLength(thickness.value, thickness.unit)]
        .filter((each) => each !== undefined)
        .join(', ');
}
