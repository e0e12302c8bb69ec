// What the stage shows: pictures that were painted in the room's light, shaded anew for how they are turned now; the wire
// of threaded rings, which mirrors the room by its own form; and the shadows of both.

#import bevy_sprite::mesh2d_vertex_output::VertexOutput
#import bevy_sprite::mesh2d_view_bindings::view
#ifdef SRGB_OUTPUT
#import bevy_render::color_operations::linear_to_srgb
#endif

@group(#{MATERIAL_BIND_GROUP}) @binding(0) var<uniform> tint: vec4<f32>;
@group(#{MATERIAL_BIND_GROUP}) @binding(1) var<uniform> surface: vec4<f32>;
@group(#{MATERIAL_BIND_GROUP}) @binding(2) var picture: texture_2d<f32>;
@group(#{MATERIAL_BIND_GROUP}) @binding(3) var picture_sampler: sampler;
@group(#{MATERIAL_BIND_GROUP}) @binding(4) var relief: texture_2d<f32>;
@group(#{MATERIAL_BIND_GROUP}) @binding(5) var relief_sampler: sampler;
@group(#{MATERIAL_BIND_GROUP}) @binding(6) var<uniform> form: vec4<f32>;
@group(#{MATERIAL_BIND_GROUP}) @binding(7) var ground: texture_2d<f32>;
@group(#{MATERIAL_BIND_GROUP}) @binding(8) var ground_sampler: sampler;

// The window: from the upper left, towards the viewer. The pictures were painted in the same light.
const KEY: vec3<f32> = vec3<f32>(-0.42, 0.58, 0.70);

// Where the light comes from now: it leans by as much as the eye is high, which is nothing else to a picture without
// perspective.
fn key_now() -> vec3<f32> {
    return normalize(KEY + vec3<f32>(0.9, 0.15, 0.0) * view.world_position.z);
}

fn shade(normal: vec3<f32>, key: vec3<f32>) -> f32 {
    return 0.55 + 0.6 * max(dot(normal, key), 0.0);
}

// A mirror of the light, halfway between it and the viewer.
fn glint(normal: vec3<f32>, key: vec3<f32>) -> f32 {
    let towards = max(dot(normal, normalize(key + vec3<f32>(0.0, 0.0, 1.0))), 0.0);
    // To the 36th power.
    let fourth = towards * towards * towards * towards;
    let eighth = fourth * fourth;
    let sixteenth = eighth * eighth;
    return sixteenth * sixteenth * fourth;
}

// What is brighter than a screen: straight up to a knee, then softly towards white.
fn softly(light: vec3<f32>) -> vec3<f32> {
    return select(light, 0.55 + 0.45 * (1.0 - exp(-(light - 0.55) / 0.45)), light > vec3<f32>(0.55));
}

// Of what comes through a clear body, the share that is the ground as the body bends it; the rest is whatever lies behind,
// chain, neighbours and shadows, as it is.
const BENT: f32 = 0.6;

// The ground where a look from straight above ends that is bent by a clear body's surface. `wide` is the picture's width, in
// the units of the ground, and the ground's picture is repeated.
fn ground_through(normal: vec3<f32>, at: vec2<f32>, wide: f32, unit: f32) -> vec3<f32> {
    let bent = refract(vec3<f32>(0.0, 0.0, -1.0), normal, surface.w);
    let aside = bent.xy / max(-bent.z, 0.3) * surface.z * wide;
    // It begins in the window's corner, while places are told from its middle.
    let from_corner = at + aside + vec2<f32>(0.5, -0.5) * view.viewport.zw * unit;
    let uv = from_corner * vec2<f32>(1.0, -1.0) / vec2<f32>(textureDimensions(ground));
    return textureSampleLevel(ground, ground_sampler, fract(uv), 0.0).rgb;
}

// A place of a picture: its light, how much of it there is, how much of the body there is, clear or not, and how its surface
// lies now.
struct Place {
    light: vec3<f32>,
    there: f32,
    body: f32,
    now: vec3<f32>,
}

// A place of a picture on a square that is a pixel larger than it on each side, so that the picture's own edges are smooth:
// where it is, and how much of it is there.
struct InPicture {
    uv: vec2<f32>,
    there: f32,
}

fn in_picture(at: vec2<f32>, size: vec2<f32>) -> InPicture {
    let within = max(size - 2.0, vec2<f32>(1.0));
    let uv = (at - 0.5) * size / within + 0.5;
    let inside = clamp(min(uv, 1.0 - uv) * within + 0.5, vec2<f32>(0.0), vec2<f32>(1.0));
    return InPicture(uv, inside.x * inside.y);
}

// A direction of a picture's own, as it lies in the room now.
fn turned_by(axis: vec2<f32>, n: vec3<f32>) -> vec3<f32> {
    return vec3<f32>(axis.x * n.x - axis.y * n.y, axis.y * n.x + axis.x * n.y, n.z);
}

fn lit_place(at: vec2<f32>, size: vec2<f32>, axis: vec2<f32>) -> Place {
    let place = in_picture(at, size);
    let uv = place.uv;
    // The picture is light, premultiplied by its opacity.
    var color = textureSample(picture, picture_sampler, uv);
    color = vec4<f32>(color.rgb / max(color.a, 0.004), color.a * place.there) * tint;
    let body = textureSample(relief, relief_sampler, uv);
    let n = normalize(body.xyz * 2.0 - 1.0);
    let turned = turned_by(axis, n);
    let twist = clamp(axis.y * surface.y, -0.7, 0.7);
    // Sine and cosine of a small angle, by the first terms of their series.
    let square = twist * twist;
    let sine = twist * (1.0 - square * (1.0 - square / 20.0) / 6.0);
    let cosine = 1.0 - square * (1.0 - square * (1.0 - square / 30.0) / 12.0) / 2.0;
    let now = normalize(vec3<f32>(turned.x * cosine + turned.z * sine, turned.y, turned.z * cosine - turned.x * sine));
    let key = key_now();
    let relit = clamp(shade(now, key) / shade(n, KEY), 0.6, 1.5);
    let shine = surface.x * (glint(now, key) - glint(n, KEY));
    let light = max(color.rgb * relit + vec3<f32>(shine), vec3<f32>(0.0));
    return Place(light, color.a, body.a * place.there, now);
}

fn lit_picture(at: vec2<f32>, size: vec2<f32>, axis: vec2<f32>) -> vec4<f32> {
    let place = lit_place(at, size, axis);
    return vec4<f32>(place.light, place.there);
}

// Grey pictures of wire take on a metal's colour; their light is more than a screen can show.
fn grey_picture(at: vec2<f32>, size: vec2<f32>, axis: vec2<f32>) -> vec4<f32> {
    let place = lit_place(at, size, axis);
    return vec4<f32>(softly(place.light), place.there);
}

// Through what is clear the ground is seen, bent; the picture has the colour that it takes from it.
fn clear_picture(at: vec2<f32>, size: vec2<f32>, axis: vec2<f32>, world: vec2<f32>, unit: f32) -> vec4<f32> {
    let place = lit_place(at, size, axis);
    let through = BENT * max(place.body - place.there, 0.0);
    let behind = ground_through(place.now, world, size.x * unit, unit);
    let there = place.there + through;
    return vec4<f32>((place.light * place.there + behind * through) / max(there, 0.004), there);
}

// How much of the picture there is at `uv`, from one of its smaller sizes; none beyond its edges, which fade over `fade`.
fn opaque_at(uv: vec2<f32>, fade: vec2<f32>, level: f32) -> f32 {
    let inside = clamp(min(uv, 1.0 - uv) / fade + 0.5, vec2<f32>(0.0), vec2<f32>(1.0));
    return textureSampleLevel(picture, picture_sampler, clamp(uv, vec2<f32>(0.0), vec2<f32>(1.0)), level).a * inside.x * inside.y;
}

// What is left of the light where so much of the window is hidden: `surface` has what is lost of each colour at first, and of
// all where all of it is hidden.
fn left_of_light(hidden: f32) -> vec4<f32> {
    return vec4<f32>(1.0 - hidden * mix(surface.xyz, surface.www, hidden), 1.0);
}

// The square is larger than the picture, by `form.xy`, so that what is blurred has room; blurred over `form.z` of its width.
fn shadow_of_picture(at: vec2<f32>) -> vec4<f32> {
    let uv = (at - 0.5) * form.xy + 0.5;
    let wide = form.z * vec2<f32>(1.0, (form.y - 1.0) / max(form.x - 1.0, 0.0001));
    let level = log2(max(wide.x * 0.5 * f32(textureDimensions(picture).x), 1.0));
    let step = wide * 0.3;
    var there = opaque_at(uv, wide, level) * 2.0;
    there += opaque_at(uv + vec2<f32>(step.x, step.y * 0.4), wide, level);
    there += opaque_at(uv + vec2<f32>(-step.x * 0.4, step.y), wide, level);
    there += opaque_at(uv + vec2<f32>(-step.x, -step.y * 0.4), wide, level);
    there += opaque_at(uv + vec2<f32>(step.x * 0.4, -step.y), wide, level);
    return left_of_light(there / 6.0);
}

// The nearest place of the right half of an upright oval, as a share of its half axes, and the way from there to `p`.
struct Nearest {
    on: vec2<f32>,
    away: vec2<f32>,
}

// From the nearest place of the right half of an upright oval with half axes `axes` to `p`; y up. The nearest place lies on the
// way from the middle of the oval's bend there to `p`, and a place found by a guessed bend is a better guess; two rounds come
// within a twentieth of a pixel for rings of any turn, and need no angles, which cost a software driver most.
fn from_half_oval(p: vec2<f32>, axes: vec2<f32>) -> Nearest {
    let oval = max(axes, vec2<f32>(0.001));
    let above = vec2<f32>(p.x, abs(p.y));
    let sought = max(above, vec2<f32>(0.0));
    let flatness = (oval.x * oval.x - oval.y * oval.y) * vec2<f32>(1.0, -1.0) / oval;
    var on = vec2<f32>(0.70710678);
    for (var round = 0; round < 2; round++) {
        let bend = flatness * on * on * on;
        let out = sought - bend;
        let reach = out * (length(oval * on - bend) / max(length(out), 0.000001));
        on = normalize(clamp((reach + bend) / oval, vec2<f32>(0.000001), vec2<f32>(1.0)));
    }
    // Left of the middle, where the oval does not go on, its end may be nearer.
    let from_line = above - oval * on;
    let from_end = above - vec2<f32>(0.0, oval.y);
    let ends = p.x < 0.0 && dot(from_end, from_end) < dot(from_line, from_line);
    let away = select(from_line, from_end, ends);
    let up = select(-1.0, 1.0, p.y >= 0.0);
    return Nearest(vec2<f32>(on.x, on.y * up), vec2<f32>(away.x, away.y * up));
}

// The wire's sizes in pixels: half axes of its middle line, and half of its thickness. `form` has how thick it is beside its
// half height, and the room round it in halves of its thickness.
fn wire_sizes(size: vec2<f32>) -> vec3<f32> {
    let thick = size.y * 0.5 / (1.0 / form.x + 1.0 + form.y);
    return vec3<f32>(max(size.x * 0.5 - thick * (1.0 + form.y), 0.0), thick / form.x, thick);
}

// The linen as a light, and the window's colour.
const LINEN: vec3<f32> = vec3<f32>(1.21, 0.99, 0.77);
const WINDOW: vec3<f32> = vec3<f32>(1.0, 0.93, 0.80);

// What polished metal shows of the room: a bench by a window up on the left, linen below and behind. The same room as the one
// the pictures were painted in (`assets/art/room.py`), a little blurred.
fn room_in_metal(n: vec3<f32>) -> vec3<f32> {
    let r = vec3<f32>(2.0 * n.z * n.xy, 2.0 * n.z * n.z - 1.0);
    var grey = 0.24 + 0.46 * smoothstep(-0.05, 1.0, r.y) + 0.26 * smoothstep(0.5, 1.0, -r.y);
    let table = (r.y + 0.34) / 0.22;
    let shelf = (r.y - 0.26) / 0.14;
    grey -= 0.20 * exp(-table * table) + 0.20 * exp(-shelf * shelf) * smoothstep(-0.5, 0.5, r.x);
    grey *= 1.0 - 0.45 * smoothstep(-0.4, 0.8, r.x - 0.4 * r.y);
    let back = max(-r.z, 0.0);
    let linen = smoothstep(0.0, 0.3, back) * (1.0 - 0.45 * back * back * back * back * back * back);
    let window = smoothstep(0.76, 0.95, dot(r, key_now())) * (1.0 + surface.x);
    return mix(max(grey, 0.03) * vec3<f32>(1.0, 0.97, 0.92), LINEN, linen) + 6.0 * window * WINDOW;
}

fn wire(p: vec2<f32>, size: vec2<f32>, axis: vec2<f32>) -> vec4<f32> {
    let sizes = wire_sizes(size);
    let half_side = sign(form.z);
    let near = from_half_oval(vec2<f32>(p.x * half_side, p.y), sizes.xy);
    let away = vec2<f32>(near.away.x * half_side, near.away.y);
    let distance = length(away);
    let there = clamp(sizes.z - distance + 0.5, 0.0, 1.0);
    // Where the wire runs: a circle that is turned about its upright axis, towards the eye on its near side.
    let deep = sqrt(max(sizes.y * sizes.y - sizes.x * sizes.x, 0.0)) * form.w;
    let runs = normalize(vec3<f32>(vec2<f32>(sizes.x * near.on.y, -sizes.y * near.on.x * half_side), deep * near.on.y));
    // Round wire: the further from its middle line, the more it turns away. What faces the eye stands square on the wire.
    let aside = away / max(distance, 0.0001);
    let across = min(distance / sizes.z, 0.98);
    let facing = normalize(vec3<f32>(0.0, 0.0, 1.0) - runs * runs.z + vec3<f32>(0.0, 0.0, 0.0001));
    let n = vec3<f32>(aside * across, 0.0) + facing * sqrt(1.0 - across * across);
    return vec4<f32>(softly(tint.rgb * room_in_metal(turned_by(axis, n))), tint.a * there);
}

fn shadow_of_wire(p: vec2<f32>, size: vec2<f32>) -> vec4<f32> {
    let sizes = wire_sizes(size);
    // How far from the oval, to first order: its edge is blurred, so that more would not be seen.
    let axes = max(sizes.xy, vec2<f32>(0.5));
    let scaled = p / axes;
    let share = length(scaled);
    let slope = max(length(scaled / axes) / max(share, 0.0001), 1.0 / max(axes.x, axes.y));
    let away = abs(share - 1.0) / slope;
    // A thin wire hides the less of the window, the wider its edge is.
    let soft = max(form.z * sizes.z, 0.5);
    let hidden = min(1.0, 2.0 * sizes.z / (sizes.z + soft)) * (1.0 - smoothstep(max(sizes.z - soft, 0.0), sizes.z + soft, away));
    return left_of_light(hidden);
}

// Something small that hides `form.x` of the window in the middle of the square.
fn shadow_patch(at: vec2<f32>) -> vec4<f32> {
    let from_middle = 2.0 * at - 1.0;
    let inside = max(1.0 - dot(from_middle, from_middle), 0.0);
    return left_of_light(form.x * inside * inside);
}

@fragment
fn fragment(in: VertexOutput) -> @location(0) vec4<f32> {
    let axis = normalize(in.world_tangent.xy);
    // Pixels across the square, by how fast the place on it changes from one pixel to the next.
    let size = 1.0 / max(vec2<f32>(length(vec2<f32>(dpdx(in.uv.x), dpdy(in.uv.x))), length(vec2<f32>(dpdx(in.uv.y), dpdy(in.uv.y)))), vec2<f32>(0.00001));
    let p = (in.uv - 0.5) * size * vec2<f32>(1.0, -1.0);
#ifdef SHADOW_OF_PICTURE
    var color = shadow_of_picture(in.uv);
#else ifdef WIRE
    var color = wire(p, size, axis);
#else ifdef SHADOW_OF_WIRE
    var color = shadow_of_wire(p, size);
#else ifdef SHADOW_PATCH
    var color = shadow_patch(in.uv);
#else ifdef GREY_PICTURE
    var color = grey_picture(in.uv, size, axis);
#else ifdef CLEAR_PICTURE
    var color = clear_picture(in.uv, size, axis, in.world_position.xy, length(dpdx(in.world_position.xy)));
#else
    var color = lit_picture(in.uv, size, axis);
#endif
#ifdef SRGB_OUTPUT
    color = vec4<f32>(linear_to_srgb(color.rgb), color.a);
#endif
    return color;
}
