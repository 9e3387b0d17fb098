import { type Column, type Layer, layersAbove } from '../../piece/column';
import type { Cell, Face } from '../../piece/face';
import type { Plan } from '../../plan/plan';

/** What has been poured or laid into a face by one step, and lies there still. */
export interface Content {
    readonly kind: 'resin' | 'inlay';
    /** The fill or inlay. */
    readonly step: number;
    /** The step that burnt its pocket. */
    readonly pocket: number;
    /** The resin's name, or that of the blank that the veneer is of. */
    readonly name: string;
    /** Where it lies: each cell with the layer itself. */
    readonly places: readonly { readonly cell: Cell; readonly layer: Layer }[];
}

/** By pocket. Of resins that were poured on each other the last. */
export function contentsOf(plan: Plan, face: Face | undefined): Content[] {
    const found = new Map<number, { cell: Cell; layer: Layer }[]>();
    for (const cell of face?.cells ?? []) {
        for (const layer of contentLayers(cell.column)) {
            const step = layer.step!;
            const known = found.get(step);
            if (known === undefined) found.set(step, [{ cell, layer }]);
            else known.push({ cell, layer });
        }
    }
    return [...found]
        .flatMap(([step, places]): Content[] => {
            const { fill, inlay } = plan.steps[step] ?? {};
            if (fill !== undefined)
                return [{ kind: 'resin', step, pocket: fill.pocket.index, name: places[0]!.layer.name, places }];
            if (inlay === undefined) return [];
            return [{ kind: 'inlay', step, pocket: inlay.pocket.index, name: inlay.reliefLaser.blank, places }];
        })
        .toSorted((a, b) => a.pocket - b.pocket);
}

function contentLayers({ layers }: Column): Layer[] {
    const laid = layers.filter(({ step }) => step !== undefined);
    const poured = laid.find(({ kind }) => kind === 'resin');
    const glued = laid.find(({ kind }) => kind === 'wood' || kind === 'glue');
    return [poured, glued].flatMap((layer) => layer ?? []);
}

/** Whether a sealer lies in this place. */
export function isSealed(plan: Plan, column: Column): boolean {
    return layersAbove(column).some(({ kind, step }) => kind === 'coat' && plan.steps[step ?? -1]?.step.kind === 'seal');
}

/** Whether a finish lies in this place. */
export function isFinished(plan: Plan, column: Column): boolean {
    return layersAbove(column).some(({ kind, step }) => kind === 'coat' && plan.steps[step ?? -1]?.step.kind === 'finish');
}

/** Whether it lies in the face that is up, and not in the one on the bed. */
export function isInFaceUp({ places }: Content): boolean {
    return places.some(({ cell, layer }) => layersAbove(cell.column).includes(layer));
}
