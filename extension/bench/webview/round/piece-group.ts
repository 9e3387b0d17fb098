import {
    BufferAttribute,
    BufferGeometry,
    Color,
    DoubleSide,
    Group,
    Mesh,
    MeshPhongMaterial,
    type Plane,
    type WebGLProgramParametersWithUniforms,
} from 'three';
import type { SectionView, SpanView } from '../../../../shared/view/bench-view';
import { type LeanAt, leanAt } from '../../../../shared/view/lean-at';
import { type RoundMesh, roundMesh } from '../../../../shared/view/round-mesh';
import type { LookKind, LookView, PaintView, RoundView } from '../../../../shared/view/round-view';
import { heightsOf } from './exaggerate';
import { fragmentHead, mirrorOf, shadeOf, uniformsOf, vertexBody, vertexHead } from './shading';

/** A piece as three.js draws it, its middle at the origin, its lower side on the bench: x right, z towards the maker, y up; mm. */
export function pieceGroup(view: RoundView, times: number, cutting: readonly Plane[], section?: SectionView): Group {
    const group = new Group();
    const heights = heightsOf(view, times);
    const mesh = roundMesh(view);
    view.looks.forEach((look, index) => {
        const geometry = partOf(mesh, index, view, heights);
        if (geometry !== undefined) group.add(solid(geometry, look, cutting));
    });
    for (const paint of view.paints) group.add(painted(paint, view, heights, cutting));
    if (section !== undefined) {
        for (const span of section.spans) group.add(cap(span, section.y, view, heights));
        for (const lean of leanAt(view, section.y)) group.add(...footOf(lean, section, view, heights));
    }
    return group;
}

/** The triangles of one look; undefined where it has none. */
function partOf(mesh: RoundMesh, look: number, view: RoundView, heights: (z: number) => number): BufferGeometry | undefined {
    const corners: number[] = [];
    // Turned to the right-handed room of the picture, triangles go the other way round.
    for (let i = 0; i + 2 < mesh.looks.length; i += 3) if (mesh.looks[i] === look) corners.push(i, i + 2, i + 1);
    if (corners.length === 0) return undefined;
    const at = (i: number, axis: number): number => mesh.places[3 * i + axis]!;
    return geometryOf(
        corners.map((i) => [at(i, 0), at(i, 1), at(i, 2)]),
        corners.map((i) => [mesh.normals[3 * i]!, mesh.normals[3 * i + 1]!, mesh.normals[3 * i + 2]!]),
        view,
        heights,
    );
}

type Place = readonly [number, number, number];

function geometryOf(
    places: readonly Place[],
    normals: readonly Place[],
    view: RoundView,
    heights: (z: number) => number,
): BufferGeometry {
    const geometry = new BufferGeometry();
    const flat = (of: readonly Place[], change: (place: Place) => Place): BufferAttribute =>
        new BufferAttribute(Float32Array.from(of.flatMap((each) => change(each))), 3);
    geometry.setAttribute(
        'position',
        flat(places, ([x, y, z]) => [x - view.width / 2, heights(z), y - view.height / 2]),
    );
    geometry.setAttribute(
        'normal',
        flat(normals, ([x, y, z]) => [x, z, y]),
    );
    geometry.setAttribute(
        'place',
        flat(places, (place) => place),
    );
    return geometry;
}

function solid(geometry: BufferGeometry, look: LookView, cutting: readonly Plane[]): Mesh {
    const mesh = new Mesh(geometry, materialOf(look, cutting));
    mesh.castShadow = true;
    mesh.receiveShadow = true;
    return mesh;
}

function materialOf(look: LookView, cutting: readonly Plane[]): MeshPhongMaterial {
    const shine = look.gloss * look.gloss;
    const material = new MeshPhongMaterial({
        color: new Color(look.colour),
        specular: new Color(look.kind === 'metal' || look.kind === 'foil' ? look.colour : '#ffffff').multiplyScalar(
            0.02 + 0.3 * shine,
        ),
        shininess: 6 + 140 * shine,
        clippingPlanes: [...cutting],
    });
    material.onBeforeCompile = (shader: WebGLProgramParametersWithUniforms) => {
        Object.assign(shader.uniforms, uniformsOf(look));
        shader.vertexShader = `${vertexHead}${shader.vertexShader.replace('#include <begin_vertex>', `#include <begin_vertex>${vertexBody}`)}`;
        shader.fragmentShader = `${fragmentHead}${shader.fragmentShader
            .replace('#include <color_fragment>', `#include <color_fragment>\n${shadeOf(look)}`)
            .replace('#include <envmap_fragment>', mirrorOf(look))}`;
    };
    material.customProgramCacheKey = () => look.kind;
    return material;
}

function painted(paint: PaintView, view: RoundView, heights: (z: number) => number, cutting: readonly Plane[]): Mesh {
    const places = cornersOf(paint);
    const geometry = geometryOf(
        places,
        places.map(() => [0, 0, 1]),
        view,
        heights,
    );
    const material = new MeshPhongMaterial({
        color: new Color(paint.colour),
        opacity: paint.opacity,
        transparent: true,
        depthWrite: false,
        polygonOffset: true,
        polygonOffsetFactor: -1,
        polygonOffsetUnits: -2,
        specular: new Color('#000000'),
        clippingPlanes: [...cutting],
    });
    const mesh = new Mesh(geometry, material);
    mesh.receiveShadow = true;
    return mesh;
}

function cornersOf({ points, corners, z }: PaintView): Place[] {
    const places: Place[] = [];
    for (let i = 0; i + 2 < corners.length; i += 3) {
        for (const at of [corners[i]!, corners[i + 2]!, corners[i + 1]!]) places.push([points[2 * at]!, points[2 * at + 1]!, z]);
    }
    return places;
}

const kindOfSpan: Readonly<Record<SpanView['kind'], LookKind>> = {
    wood: 'wood',
    inlay: 'wood',
    resin: 'resin',
    glue: 'glue',
    foil: 'foil',
    tape: 'tape',
    char: 'char',
    coat: 'resin',
};

/** What the section shows of a wall that leans: the wood that stands out below its rim. */
function footOf({ rim, steps }: LeanAt, { spans, y }: SectionView, view: RoundView, heights: (z: number) => number): Mesh[] {
    const middle = (steps[0]!.z + steps.at(-1)!.z) / 2;
    const standing = spans.find(
        ({ kind, from, to, bottom, top }) =>
            (kind === 'wood' || kind === 'inlay') &&
            bottom <= middle &&
            middle <= top &&
            Math.min(Math.abs(from - rim), Math.abs(to - rim)) < nearRim,
    );
    if (standing === undefined) return [];
    // A hair nearer to the eye than the hollow behind it.
    const places = steps.slice(1).flatMap((lower, i): Place[] => {
        const upper = steps[i]!;
        const at = (x: number, z: number): Place => [x, y + 1e-3, z];
        return [
            at(rim, upper.z),
            at(upper.x, upper.z),
            at(lower.x, lower.z),
            at(rim, upper.z),
            at(lower.x, lower.z),
            at(rim, lower.z),
        ];
    });
    return [capMesh(places, 'wood', standing.colour, view, heights)];
}

/** Closer than this a span ends at the rim of a wall, mm. */
const nearRim = 0.02;

/** What the section shows of one layer. */
function cap(
    { from, to, bottom, top, kind, colour }: SpanView,
    y: number,
    view: RoundView,
    heights: (z: number) => number,
): Mesh {
    const places: Place[] = (
        [
            [from, bottom],
            [to, bottom],
            [to, top],
            [from, bottom],
            [to, top],
            [from, top],
        ] as const
    ).map(([x, z]) => [x, y, z]);
    return capMesh(places, kindOfSpan[kind], colour, view, heights);
}

function capMesh(
    places: readonly Place[],
    kind: LookKind,
    colour: string,
    view: RoundView,
    heights: (z: number) => number,
): Mesh {
    const geometry = geometryOf(
        places,
        places.map(() => [0, 1, 0]),
        view,
        heights,
    );
    const grain = kind === 'wood' ? view.looks.find((look) => look.colour === colour)?.grain : undefined;
    const mesh = solid(geometry, { kind, colour, gloss: 0.15, ...(grain === undefined ? {} : { grain }) }, []);
    (mesh.material as MeshPhongMaterial).side = DoubleSide;
    return mesh;
}
