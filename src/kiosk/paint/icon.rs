//! Signs drawn with lines, so that they need no font and read the same in every language.

use bevy_egui::egui::{Pos2, Rect, Shape, Stroke, epaint::PathShape, pos2};

use super::{super::tone::Tone, Brush};

/// A sign.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Icon {
    /// Back.
    Back,
    /// Onwards.
    Onward,
    /// Take back.
    Undo,
    /// Make again.
    Redo,
    /// Start over.
    Anew,
    /// Surprise me.
    Spark,
    /// Sort what is shown.
    Sieve,
    /// Close.
    Cross,
    /// Ticked.
    Tick,
    /// More.
    Plus,
    /// Less.
    Minus,
    /// Caution.
    Caution,
    /// Not for this wearer.
    NotFor,
    /// A person.
    Person,
    /// A globe: language.
    Globe,
    /// Up.
    Up,
    /// Down.
    Down,
    /// Look closer or from afar.
    Glass,
    /// A compartment.
    Compartment,
    /// No line to the desk.
    Away,
    /// A large and a small letter: how text looks.
    Letters,
    /// A rule: as large as it is.
    Rule,
}

impl Icon {
    /// Lines of the sign on a square from 0 to 1.
    #[expect(clippy::too_many_lines, reason = "a list of shapes, an arm for each sign")]
    fn lines(self) -> Vec<Vec<Pos2>> {
        let p = |points: &[(f32, f32)]| points.iter().map(|(x, y)| pos2(*x, *y)).collect::<Vec<_>>();
        match self {
            Self::Back => vec![p(&[(0.62, 0.18), (0.3, 0.5), (0.62, 0.82)])],
            Self::Onward => vec![p(&[(0.38, 0.18), (0.7, 0.5), (0.38, 0.82)])],
            Self::Up => vec![p(&[(0.18, 0.62), (0.5, 0.3), (0.82, 0.62)])],
            Self::Down => vec![p(&[(0.18, 0.38), (0.5, 0.7), (0.82, 0.38)])],
            Self::Undo => vec![
                p(&[(0.36, 0.16), (0.16, 0.36), (0.36, 0.56)]),
                bow(pos2(0.52, 0.6), 0.24, -1.571, 1.9, &[pos2(0.16, 0.36)]),
            ],
            Self::Redo => vec![
                p(&[(0.64, 0.16), (0.84, 0.36), (0.64, 0.56)]),
                bow(pos2(0.48, 0.6), 0.24, -1.571, -5.04, &[pos2(0.84, 0.36)]),
            ],
            Self::Anew => {
                vec![bow(pos2(0.5, 0.52), 0.32, -0.5, 4.6, &[]), p(&[(0.8, 0.1), (0.79, 0.38), (0.52, 0.33)])]
            }
            Self::Spark => vec![
                p(&[
                    (0.42, 0.1),
                    (0.5, 0.42),
                    (0.82, 0.5),
                    (0.5, 0.58),
                    (0.42, 0.9),
                    (0.34, 0.58),
                    (0.02, 0.5),
                    (0.34, 0.42),
                    (0.42, 0.1),
                ]),
                p(&[(0.84, 0.08), (0.84, 0.28)]),
                p(&[(0.74, 0.18), (0.94, 0.18)]),
            ],
            Self::Sieve => vec![
                p(&[(0.1, 0.26), (0.9, 0.26)]),
                p(&[(0.1, 0.52), (0.9, 0.52)]),
                p(&[(0.1, 0.78), (0.9, 0.78)]),
                p(&[(0.64, 0.16), (0.64, 0.36)]),
                p(&[(0.3, 0.42), (0.3, 0.62)]),
                p(&[(0.56, 0.68), (0.56, 0.88)]),
            ],
            Self::Cross => vec![p(&[(0.22, 0.22), (0.78, 0.78)]), p(&[(0.78, 0.22), (0.22, 0.78)])],
            Self::Tick => vec![p(&[(0.14, 0.54), (0.4, 0.8), (0.86, 0.22)])],
            Self::Plus => vec![p(&[(0.5, 0.16), (0.5, 0.84)]), p(&[(0.16, 0.5), (0.84, 0.5)])],
            Self::Minus => vec![p(&[(0.16, 0.5), (0.84, 0.5)])],
            Self::Caution => vec![
                p(&[(0.5, 0.1), (0.94, 0.88), (0.06, 0.88), (0.5, 0.1)]),
                p(&[(0.5, 0.38), (0.5, 0.62)]),
                p(&[(0.5, 0.74), (0.5, 0.76)]),
            ],
            Self::NotFor => {
                vec![bow(pos2(0.5, 0.5), 0.42, 0.0, 6.284, &[]), p(&[(0.21, 0.21), (0.79, 0.79)])]
            }
            Self::Person => vec![
                bow(pos2(0.5, 0.28), 0.17, 0.0, 6.284, &[]),
                p(&[(0.14, 0.9), (0.2, 0.68), (0.36, 0.58), (0.64, 0.58), (0.8, 0.68), (0.86, 0.9)]),
            ],
            Self::Globe => vec![
                bow(pos2(0.5, 0.5), 0.4, 0.0, 6.284, &[]),
                p(&[(0.1, 0.5), (0.9, 0.5)]),
                p(&[(0.5, 0.1), (0.34, 0.3), (0.3, 0.5), (0.34, 0.7), (0.5, 0.9)]),
                p(&[(0.5, 0.1), (0.66, 0.3), (0.7, 0.5), (0.66, 0.7), (0.5, 0.9)]),
            ],
            Self::Glass => vec![bow(pos2(0.42, 0.42), 0.28, 0.0, 6.284, &[]), p(&[(0.63, 0.63), (0.9, 0.9)])],
            Self::Compartment => vec![
                p(&[(0.1, 0.1), (0.9, 0.1), (0.9, 0.9), (0.1, 0.9), (0.1, 0.1)]),
                p(&[(0.5, 0.1), (0.5, 0.9)]),
                p(&[(0.1, 0.5), (0.9, 0.5)]),
            ],
            Self::Letters => vec![
                p(&[(0.04, 0.86), (0.33, 0.14), (0.62, 0.86)]),
                p(&[(0.15, 0.6), (0.51, 0.6)]),
                p(&[(0.64, 0.86), (0.81, 0.46), (0.98, 0.86)]),
                p(&[(0.71, 0.71), (0.91, 0.71)]),
            ],
            Self::Rule => vec![
                p(&[(0.04, 0.32), (0.96, 0.32), (0.96, 0.68), (0.04, 0.68), (0.04, 0.32)]),
                p(&[(0.27, 0.32), (0.27, 0.5)]),
                p(&[(0.5, 0.32), (0.5, 0.56)]),
                p(&[(0.73, 0.32), (0.73, 0.5)]),
            ],
            Self::Away => vec![
                bow(pos2(0.5, 0.84), 0.62, -2.36, -0.79, &[]),
                bow(pos2(0.5, 0.84), 0.36, -2.36, -0.79, &[]),
                p(&[(0.5, 0.82), (0.5, 0.84)]),
                p(&[(0.14, 0.1), (0.86, 0.92)]),
            ],
        }
    }
}

/// Points of an arc from angle `from` to `to`, after `before`.
fn bow(middle: Pos2, radius: f32, from: f32, to: f32, before: &[Pos2]) -> Vec<Pos2> {
    let steps = 22;
    let arc = (0..=steps).map(|i| {
        let angle = from + (to - from) * i as f32 / steps as f32;
        pos2(middle.x + radius * angle.cos(), middle.y + radius * angle.sin())
    });
    before.iter().copied().chain(arc).collect()
}

impl Brush<'_> {
    /// Draws a sign into the middle of `rect`.
    pub(crate) fn icon(&self, rect: Rect, icon: Icon, tone: Tone) {
        self.note_sign(rect, icon);
        let color = self.color(tone);
        let side = rect.width().min(rect.height());
        let square = Rect::from_center_size(rect.center(), bevy_egui::egui::vec2(side, side));
        let width = (side * 0.09).max(2.0);
        for line in icon.lines() {
            let points: Vec<Pos2> =
                line.iter().map(|p| pos2(square.left() + p.x * side, square.top() + p.y * side)).collect();
            for end in points.first().into_iter().chain(points.last()) {
                self.painter.circle_filled(*end, width / 2.0, color);
            }
            self.painter.add(Shape::Path(PathShape::line(points, Stroke::new(width, color))));
        }
    }
}
