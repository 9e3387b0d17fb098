import { type RoundMesh, roundMesh } from '../../../../shared/view/round-mesh';
import type { RoundView } from '../../../../shared/view/round-view';
import { heightsOf } from './exaggerate';
import type { RoundScene, RoundViewer } from './scene';

/** A still picture of the first piece where there is no WebGL: its triangles from far to near, each in one shade. */
export function createStill(canvas: HTMLCanvasElement): RoundViewer {
    let shown: RoundScene | undefined;
    let [width, height] = [1, 1];
    let drawn: readonly unknown[] = [];
    let waiting = 0;
    const draw = (wide: number): void => {
        canvas.width = Math.round(wide);
        canvas.height = Math.round((wide * height) / width);
        const pen = canvas.getContext('2d');
        if (pen !== null && shown?.pieces[0] !== undefined) paint(pen, shown, shown.pieces[0].view);
    };
    /** Only what has changed is drawn again, and once for all changes of a moment. */
    const later = (): void => {
        if (waiting !== 0) return;
        waiting = requestAnimationFrame(() => {
            waiting = 0;
            const { orbit, light, heights, pieces } = shown ?? {};
            const key = [width, height, orbit, light?.around, light?.above, heights, pieces?.[0]?.view];
            if (key.every((each, i) => each === drawn[i])) return;
            drawn = key;
            draw(width * (devicePixelRatio || 1));
        });
    };
    return {
        show(scene) {
            shown = scene;
            later();
        },
        resize(wide, high) {
            [width, height] = [wide, high];
            later();
        },
        picture(wide) {
            draw(wide);
            const data = canvas.toDataURL('image/png');
            draw(width * (devicePixelRatio || 1));
            return data.slice(data.indexOf(',') + 1);
        },
        dispose() {
            cancelAnimationFrame(waiting);
        },
    };
}

interface Facet {
    readonly corners: readonly [number, number][];
    readonly far: number;
    readonly fill: string;
}

function paint(pen: CanvasRenderingContext2D, scene: RoundScene, view: RoundView): void {
    const facets = facetsOf(roundMesh(view), scene, view).sort((a, b) => b.far - a.far);
    const xs = facets.flatMap(({ corners }) => corners.map(([x]) => x));
    const ys = facets.flatMap(({ corners }) => corners.map(([, y]) => y));
    const [left, right, top, bottom] = [smallest(xs), -smallest(xs.map((x) => -x)), smallest(ys), -smallest(ys.map((y) => -y))];
    const { width, height } = pen.canvas;
    const scale = 0.92 * Math.min(width / (right - left), height / (bottom - top));
    for (const { corners, fill } of facets) {
        pen.beginPath();
        for (const [x, y] of corners)
            pen.lineTo(width / 2 + (x - (left + right) / 2) * scale, height / 2 + (y - (top + bottom) / 2) * scale);
        pen.closePath();
        pen.fillStyle = fill;
        pen.strokeStyle = fill;
        pen.fill();
        pen.stroke();
    }
}

function smallest(of: readonly number[]): number {
    return of.reduce((least, value) => Math.min(least, value), Number.POSITIVE_INFINITY);
}

function facetsOf({ places, normals, looks }: RoundMesh, { orbit, light, heights }: RoundScene, view: RoundView): Facet[] {
    const tall = heightsOf(view, heights);
    const [cosA, sinA] = [Math.cos(orbit.around), Math.sin(orbit.around)];
    const [cosE, sinE] = [Math.cos(orbit.above), Math.sin(orbit.above)];
    const beam = [
        Math.cos(light.above) * Math.cos(light.around),
        -Math.cos(light.above) * Math.sin(light.around),
        Math.sin(light.above),
    ];
    const facets: Facet[] = [];
    for (let i = 0; i + 8 < places.length; i += 9) {
        const normal = normals.subarray(i, i + 3);
        const toward = (normal[0]! * sinA + normal[1]! * cosA) * cosE + normal[2]! * sinE;
        if (toward <= 0) continue;
        let far = 0;
        const corners = [0, 3, 6].map((k): [number, number] => {
            const [x, y, z] = [places[i + k]! - view.width / 2, places[i + k + 1]! - view.height / 2, tall(places[i + k + 2]!)];
            const near = x * sinA + y * cosA;
            far -= (near * cosE + z * sinE) / 3;
            return [x * cosA - y * sinA, near * sinE - z * cosE];
        });
        const lit = 0.55 + 0.45 * Math.max(0, normal[0]! * beam[0]! + normal[1]! * beam[1]! + normal[2]! * beam[2]!);
        facets.push({ corners, far, fill: shaded(view.looks[looks[i / 3]!]!.colour, lit) });
    }
    return facets;
}

function shaded(colour: string, part: number): string {
    const parts = [1, 3, 5].map((at) => Math.round(Number.parseInt(colour.slice(at, at + 2), 16) * part));
    return `rgb(${parts.join(' ')})`;
}
