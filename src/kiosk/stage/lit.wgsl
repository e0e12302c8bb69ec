// A picture that was painted in the room's light, shaded anew for how it is turned now.

#import bevy_sprite::mesh2d_vertex_output::VertexOutput
#ifdef SRGB_OUTPUT
#import bevy_render::color_operations::linear_to_srgb
#endif

@group(#{MATERIAL_BIND_GROUP}) @binding(0) var<uniform> tint: vec4<f32>;
@group(#{MATERIAL_BIND_GROUP}) @binding(1) var<uniform> surface: vec2<f32>;
@group(#{MATERIAL_BIND_GROUP}) @binding(2) var picture: texture_2d<f32>;
@group(#{MATERIAL_BIND_GROUP}) @binding(3) var picture_sampler: sampler;
@group(#{MATERIAL_BIND_GROUP}) @binding(4) var relief: texture_2d<f32>;
@group(#{MATERIAL_BIND_GROUP}) @binding(5) var relief_sampler: sampler;

// The window: from the upper left, towards the viewer. The pictures were painted in the same light.
const KEY: vec3<f32> = vec3<f32>(-0.42, 0.58, 0.70);
// Halfway between it and the viewer.
const HALF: vec3<f32> = vec3<f32>(-0.228, 0.315, 0.921);

fn shade(normal: vec3<f32>) -> f32 {
    return 0.55 + 0.6 * max(dot(normal, KEY), 0.0);
}

fn glint(normal: vec3<f32>) -> f32 {
    return pow(max(dot(normal, HALF), 0.0), 36.0);
}

@fragment
fn fragment(in: VertexOutput) -> @location(0) vec4<f32> {
    // The picture is premultiplied as it is written, not as light adds up: its tones by about the power of 2.2.
    var color = textureSample(picture, picture_sampler, in.uv);
    color = vec4<f32>(min(color.rgb / pow(max(color.a, 0.004), 2.2), vec3<f32>(1.0)), color.a) * tint;
    let axis = normalize(in.world_tangent.xy);
    let n = normalize(textureSample(relief, relief_sampler, in.uv).xyz * 2.0 - 1.0);
    // How it lies in the room now.
    let turned = vec3<f32>(axis.x * n.x - axis.y * n.y, axis.y * n.x + axis.x * n.y, n.z);
    let twist = clamp(axis.y * surface.y, -0.7, 0.7);
    let now = normalize(vec3<f32>(turned.x * cos(twist) + turned.z * sin(twist), turned.y, turned.z * cos(twist) - turned.x * sin(twist)));
    let relit = clamp(shade(now) / shade(n), 0.6, 1.5);
    let shine = surface.x * (glint(now) - glint(n));
    color = vec4<f32>(max(color.rgb * relit + vec3<f32>(shine), vec3<f32>(0.0)), color.a);
#ifdef SRGB_OUTPUT
    color = vec4<f32>(linear_to_srgb(color.rgb), color.a);
#endif
    return color;
}
