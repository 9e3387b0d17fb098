import type { LangiumDocument } from 'langium';
import { type Message, phrase } from '../../shared/recipe/phrase';
import type { Wood } from '../../shared/recipe/stock';
import type { NewRecipeParams, Picked } from '../../shared/view/new-recipe';
import * as ast from '../generated/ast';
import { beamOf, laserOf, sheetOf, woodOf } from '../lowering/stock';
import type { KerfServices } from '../services';
import { freeName } from './free-name';
import { newBoard, newLaser, newVeneer, usualField } from './new-stock';
import { declared, fileOf, filesOfPieces } from './shop-here';
import type { SizeInMm } from './start';
import { apart } from './supplies';

/** Where things are picked from, and the names that are taken there. */
export interface Shelf {
    readonly documents: readonly LangiumDocument[];
    readonly names: ReadonlySet<string>;
    readonly services: KerfServices;
}

interface Problem {
    readonly problem: Message;
}

/** A thing as it is declared, or with the text by which it is to be. */
export interface PickedSheet {
    readonly name: string;
    readonly node?: ast.Sheet & ast.Entry;
    readonly text?: string;
    readonly wood?: Wood;
    /** mm */
    readonly thickness?: { readonly value: number; readonly tolerance: number };
    readonly moisture?: number;
    readonly bought?: SizeInMm;
}

export interface PickedLaser {
    readonly name: string;
    readonly node?: ast.Laser;
    readonly text?: string;
    readonly foilStops: boolean;
    readonly field?: SizeInMm;
}

export interface PickedStock {
    readonly board: PickedSheet;
    readonly laser: PickedLaser;
    readonly veneer: PickedSheet | undefined;
}

/** What a recipe is made of and burnt with, or why it cannot be. */
export function pickStock(params: NewRecipeParams, shelf: Shelf): PickedStock | Problem {
    const board = pickedSheet('board', params.board, shelf);
    if ('problem' in board) return board;
    const laser = pickedLaser(params.laser, shelf);
    if ('problem' in laser) return laser;
    const isInlay = params.technique === 'inlay';
    if (isInlay && !laser.foilStops)
        return {
            problem: phrase`Foil does not stop the beam of ${laser.name}: the veneer half of an inlay cannot be burnt with it.`,
        };
    const veneer = params.veneer && pickedSheet('veneer', params.veneer, shelf, board.moisture);
    if (isInlay && veneer === undefined) return { problem: phrase`An inlay needs a veneer.` };
    if (veneer !== undefined && 'problem' in veneer) return veneer;
    return { board, laser, veneer };
}

/** A board or veneer that the shop has, or one to be made of a built-in wood. */
function pickedSheet(
    kind: 'board' | 'veneer',
    picked: Picked,
    { documents, names, services }: Shelf,
    moisture?: number,
): PickedSheet | Problem {
    if (picked.file !== undefined) {
        const nodes: readonly (ast.Sheet & ast.Entry)[] =
            kind === 'board' ? declared(documents, ast.isBoard) : declared(documents, ast.isVeneer);
        const node = nodes.find((each) => each.name === picked.name && fileOf(each) === picked.file);
        if (node === undefined) return { problem: phrase`There is no ${kind} ${picked.name} any more.` };
        const { wood, thickness, moisture: held, sheet } = sheetOf(node);
        return {
            name: node.name,
            node,
            ...(wood === undefined ? {} : { wood }),
            ...(thickness === undefined ? {} : { thickness }),
            ...(held === undefined ? {} : { moisture: held.value }),
            ...(sheet === undefined ? {} : { bought: { width: sheet.width.value, height: sheet.height.value } }),
        };
    }
    const wood = declared(documents, ast.isWood).find(({ name }) => name === picked.name);
    if (wood === undefined) return { problem: phrase`There is no wood ${picked.name}.` };
    const made = kind === 'board' ? newBoard(wood.name) : newVeneer(wood.name, moisture);
    return {
        ...renamed(made, freeName(made.name, names, kind, services)),
        wood: woodOf(wood),
        thickness: made.thickness,
        moisture: made.moisture,
    };
}

/** The shop's laser, or one to be written for a built-in source. */
function pickedLaser(picked: Picked, { documents, names, services }: Shelf): PickedLaser | Problem {
    if (picked.file !== undefined) {
        const node = declared(documents, ast.isLaser).find((each) => each.name === picked.name && fileOf(each) === picked.file);
        if (node === undefined) return { problem: phrase`There is no laser ${picked.name} any more.` };
        const { field, beam } = laserOf(node);
        return {
            name: node.name,
            node,
            foilStops: beam?.foilStops ?? true,
            ...(field === undefined ? {} : { field: { width: field.width.value, height: field.height.value } }),
        };
    }
    const beam = declared(documents, ast.isBeam).find(({ name }) => name === picked.name);
    if (beam === undefined) return { problem: phrase`There is no laser source ${picked.name}.` };
    const { wavelength, foilStops } = beamOf(beam);
    const made = newLaser(beam.name, (wavelength?.value ?? 0.0106) * 1000);
    return { ...renamed(made, freeName(made.name, names, 'laser', services)), foilStops, field: usualField };
}

function renamed(made: { readonly name: string; readonly text: string }, name: string): { name: string; text: string } {
    return { name, text: made.text.replace(` ${made.name} {`, ` ${name} {`) };
}

/** Woods of which veneer is easily had. @commonPractice */
const usualVeneers = ['sugar-maple', 'black-walnut', 'black-cherry', 'white-ash'];

/** Veneers for a board, best first: the shop's own, then some to be bought, each by how it stands out from the board. */
export function veneersFor(colour: string, documents: readonly LangiumDocument[]): Picked[] {
    const byContrast = <T extends { readonly wood?: Wood }>(all: readonly T[]): T[] =>
        all.toSorted((a, b) => apart(b.wood?.colour ?? colour, colour) - apart(a.wood?.colour ?? colour, colour));
    const ofPieces = filesOfPieces(documents);
    const own = declared(documents, ast.isVeneer)
        .map((node) => {
            const { wood } = sheetOf(node);
            return { name: node.name, file: fileOf(node), ...(wood === undefined ? {} : { wood }) };
        })
        .toSorted((a, b) => Number(ofPieces.has(a.file)) - Number(ofPieces.has(b.file)));
    const woods = declared(documents, ast.isWood).filter(({ name }) => usualVeneers.includes(name));
    return [
        ...byContrast(own).map(({ name, file }) => ({ name, file })),
        ...byContrast(woods.map((node) => ({ name: node.name, wood: woodOf(node) }))).map(({ name }) => ({ name })),
    ];
}

/** Colour of a board's wood, or of a board that is to be made of a wood. */
export function colourOf({ name, file }: Picked, documents: readonly LangiumDocument[]): string {
    const board = declared(documents, ast.isBoard).find((node) => node.name === name && fileOf(node) === file);
    const bare = declared(documents, ast.isWood).find((node) => node.name === name);
    const wood = board === undefined ? bare && woodOf(bare) : sheetOf(board).wood;
    return wood?.colour ?? '#c8a878';
}
