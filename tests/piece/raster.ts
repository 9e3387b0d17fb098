import type { Deed } from '../../shared/piece/after-deed';
import { exactly, type Interval } from '../../shared/quantity/interval';

/** An independent model of a face for the tests: plain stacks on a grid of squares, without regions, worked by their own sums. */
export interface Stack {
    /** From the bottom up. */
    layers: { readonly kind: string; readonly name: string; thick: number; readonly step: number }[];
    digs: Set<number>;
    /** Burns of the face that is down, and how far that is from the plane on which the blank lay at first. */
    digsBelow: Set<number>;
    lift: number;
    gone: boolean;
}

export class Raster {
    stacks: Stack[];
    /** How far the face has come down, and the one that is down. */
    private face = 0;
    private faceBelow = 0;
    /** Volume of what each step took and laid, summed where it happened, by `kind name`. */
    readonly taken = new Map<string, number>();
    readonly added = new Map<string, number>();

    constructor(
        readonly width: number,
        readonly height: number,
        readonly cell: number,
        sheet: string,
        private readonly thickness: number,
    ) {
        this.stacks = Array.from({ length: width * height }, () => ({
            layers: [{ kind: 'wood', name: sheet, thick: thickness, step: -1 }],
            digs: new Set<number>(),
            digsBelow: new Set<number>(),
            lift: 0,
            gone: false,
        }));
        for (let i = 0; i < this.stacks.length; i++) this.count(this.added, 'wood', sheet, thickness);
    }

    /** @param inside whether the middle of a square lies in the deed's region */
    work(deed: Deed, inside: (x: number, y: number) => boolean): void {
        if (deed.do === 'turn') this.turn(deed.axis === 'upright');
        this.stacks.forEach((stack, i) => {
            if (stack.gone) return;
            const x = ((i % this.width) + 0.5) * this.cell;
            const y = (Math.floor(i / this.width) + 0.5) * this.cell;
            this.workOne(stack, deed, inside(x, y));
        });
        if (deed.do === 'sand') this.face += deed.below.value;
    }

    private turn(isUpright: boolean): void {
        for (const stack of this.stacks) {
            const lift = this.heightOf(stack);
            Object.assign(stack, { layers: stack.layers.reverse(), lift, digs: stack.digsBelow, digsBelow: stack.digs });
        }
        const { width, height } = this;
        this.stacks = this.stacks.map((_, i) => {
            const [x, y] = [i % width, Math.floor(i / width)];
            return this.stacks[isUpright ? y * width + (width - 1 - x) : (height - 1 - y) * width + x]!;
        });
        [this.face, this.faceBelow] = [this.faceBelow, this.face];
    }

    heightOf({ layers, lift }: Stack): number {
        return this.thickness - lift - layers.reduce((sum, { thick }) => sum + thick, 0);
    }

    private workOne(stack: Stack, deed: Deed, isInside: boolean): void {
        const { layers } = stack;
        const top = () => layers[layers.length - 1];
        const put = (kind: string, name: string, thick: number): void => {
            layers.push({ kind, name, thick, step: 'step' in deed ? deed.step : -1 });
            this.count(this.added, kind, name, thick);
        };
        const take = (thick: number): void => {
            const layer = top()!;
            this.count(this.taken, layer.kind, layer.name, thick);
            layer.thick -= thick;
            if (layer.thick <= 1e-9) layers.pop();
        };
        const unmask = (): void => {
            for (;;) {
                let under = layers.length - 1;
                while (layers[under]?.kind === 'coat') under--;
                const kind = layers[under]?.kind;
                if (kind !== 'tape' && !(kind === 'air' && under === layers.length - 1)) return;
                while (layers.length > under) take(top()!.thick);
            }
        };
        if (layers.length === 0 && deed.do !== 'cut' && deed.do !== 'free') return;
        switch (deed.do) {
            case 'burn': {
                if (!isInside) return;
                let energy = 1;
                const woods = layers.filter(({ kind }) => kind === 'wood').map(({ name }) => name);
                let rate = deed.depths[woods[woods.length - 1] ?? '']?.value ?? 0;
                let dug = 0;
                while (layers.length > 0) {
                    const layer = top()!;
                    if (['tape', 'air', 'coat'].includes(layer.kind)) {
                        take(layer.thick);
                        continue;
                    }
                    if (layer.kind === 'resin' || layer.kind === 'foil') break;
                    if (layer.kind === 'wood') rate = deed.depths[layer.name]?.value ?? rate;
                    const most = deed.through ? layer.thick : Math.min(layer.thick, energy * rate);
                    dug += most;
                    energy -= rate > 0 ? most / rate : 0;
                    const whole = most > layer.thick - 1e-9;
                    take(whole ? layer.thick : most);
                    if (!whole || (!deed.through && energy <= 1e-9)) break;
                }
                if (dug > 1e-9) stack.digs.add(deed.step);
                return;
            }
            case 'fill': {
                const room = this.heightOf(stack) - this.face;
                if (!stack.digs.has(deed.pocket) || room <= 1e-9) return;
                let dug = room;
                for (const { kind, thick } of layers.toReversed()) {
                    if (kind !== 'resin' && kind !== 'coat') break;
                    dug += thick;
                }
                put('resin', deed.resin, room * deed.share + dug * deed.over);
                return;
            }
            case 'lay':
                if (!isInside || !stack.digs.has(deed.pocket)) return;
                if (this.heightOf(stack) > deed.floor.value + 1e-9) put('air', 'hollow', this.heightOf(stack) - deed.floor.value);
                put('glue', deed.glue, deed.film.value);
                put('wood', deed.sheet, deed.veneer.value);
                return;
            case 'sand': {
                unmask();
                if (!deed.flush && deed.below.value === 0) return;
                const plane = this.face + deed.below.value;
                const started = layers.length;
                let sanded = this.heightOf(stack) <= plane + 1e-9;
                while (layers.length > 0 && this.heightOf(stack) < plane + (top()!.thick <= 1e-9 ? 1e-9 : -1e-9)) {
                    take(Math.min(top()!.thick, Math.max(0, plane - this.heightOf(stack))));
                }
                if (top()?.kind === 'air' && sanded) take(top()!.thick);
                sanded &&= started > 0;
                if (sanded && layers.length > 0 && this.heightOf(stack) <= plane + 1e-9)
                    for (const dig of stack.digs) if (dig >= top()!.step) stack.digs.delete(dig);
                return;
            }
            case 'coat':
                put('coat', deed.name, 0);
                return;
            case 'mask': {
                const deep = this.heightOf(stack) - this.face;
                if (deep > 1e-9) put('air', 'hollow', deep);
                put('tape', 'tape', 0);
                return;
            }
            case 'peel':
                unmask();
                return;
            case 'cut':
            case 'free':
                if (!isInside) return;
                stack.gone = true;
                for (const { kind, name, thick } of layers) this.count(this.taken, kind, name, thick);
                layers.length = 0;
                return;
            case 'join':
            case 'turn':
            case 'mark':
                return;
        }
    }

    private count(into: Map<string, number>, kind: string, name: string, thick: number): void {
        if (kind === 'air') return;
        const key = `${kind} ${name}`;
        into.set(key, (into.get(key) ?? 0) + thick * this.cell ** 2);
    }
}

export function depths(of: Readonly<Record<string, number>>): Record<string, Interval> {
    return Object.fromEntries(Object.entries(of).map(([sheet, depth]) => [sheet, exactly(depth)]));
}
