//! Quantities, lengths and rings, as they stand in the files of bases, drops and parts.

use std::str::FromStr;

use crate::{
    craft::{HEAVIEST_KG, HEAVIEST_KG_PER_M, LONGEST_M, Length, QuantityError, Ring, WantedQuantity},
    ron_tree::{Detail, Fields, Node, Reader, What, detail, what},
};

/// A required length between two others, in millimetres.
pub(super) fn length(reader: &mut Reader<'_>, f: &Fields<'_>, name: &str, low_mm: f64, high_mm: f64) -> Option<Length> {
    quantity(reader, f, name, |length: &Length| length.mm(), (low_mm, high_mm, "mm"))
}

/// A required quantity between `low` and `high`, as `size` measures it.
pub(super) fn quantity<T: FromStr<Err = QuantityError>>(
    reader: &mut Reader<'_>,
    f: &Fields<'_>,
    name: &str,
    size: impl Fn(&T) -> f64,
    (low, high, unit): (f64, f64, &str),
) -> Option<T> {
    let node = reader.required(f, name)?;
    let value: T = parsed(reader, node, what("a-quantity", "a quantity with its unit"))?;
    if (low..=high).contains(&size(&value)) {
        return Some(value);
    }
    let english = detail!(
        "a-quantity-between",
        "{name} from {low} {unit} to {high} {unit}",
        name = name,
        low = low,
        high = high,
        unit = unit
    );
    reader.unlike(node, english)
}

/// A quantity in quotes, as in `"24in"`.
pub(super) fn parsed<T: FromStr<Err = QuantityError>>(reader: &mut Reader<'_>, node: &Node, of: What) -> Option<T> {
    match reader.text(node, of)?.parse() {
        Ok(value) => Some(value),
        Err(error) => {
            let wanted = wanted(error.wanted);
            let found = detail!("wrong-quantity", "{found} is not {wanted}", found = error.found, wanted = wanted);
            reader.wrong(node.at, found, example(error.wanted));
            None
        }
    }
}

fn wanted(quantity: WantedQuantity) -> Detail {
    match quantity {
        WantedQuantity::Length => detail!("a-length", "a length with its unit"),
        WantedQuantity::LengthUpToMost => detail!("a-length-up-to", "a length up to {most} m", most = LONGEST_M),
        WantedQuantity::AmericanWire => detail!("an-american-wire", "an American wire number from 0 to 40"),
        WantedQuantity::ImperialWire => detail!("an-imperial-wire", "an imperial wire number from 10 to 30"),
        WantedQuantity::Weight => detail!("a-weight", "a weight with its unit"),
        WantedQuantity::WeightUpToMost => detail!("a-weight-up-to", "a weight up to {most} kg", most = HEAVIEST_KG),
        WantedQuantity::WeightPerLength => detail!("a-weight-per-length", "a weight per length with its unit"),
        WantedQuantity::WeightPerLengthUpToMost => {
            let most = HEAVIEST_KG_PER_M;
            detail!("a-weight-per-length-up-to", "a weight per length up to {most} kg a metre", most = most)
        }
    }
}

fn example(quantity: WantedQuantity) -> Detail {
    match quantity {
        WantedQuantity::Length | WantedQuantity::LengthUpToMost => {
            detail!("right-length", "write \"24in\", \"610mm\", \"2.5cm\", \"18awg\" or \"20swg\"")
        }
        WantedQuantity::AmericanWire => detail!("right-american-wire", "write \"18awg\""),
        WantedQuantity::ImperialWire => detail!("right-imperial-wire", "write \"20swg\""),
        WantedQuantity::Weight | WantedQuantity::WeightUpToMost => {
            detail!("right-weight", "write \"3.4g\", \"250mg\" or \"0.5oz\"")
        }
        WantedQuantity::WeightPerLength | WantedQuantity::WeightPerLengthUpToMost => {
            detail!("right-weight-per-length", "write \"12.5g/m\" or \"3.8g/ft\"")
        }
    }
}

/// A ring by its outside diameter and its wire.
pub(super) fn ring(reader: &mut Reader<'_>, node: &Node) -> Option<Ring> {
    let f = reader.fields(node, what("a-ring", "a ring"), &["outside", "wire"])?;
    let outside = length(reader, &f, "outside", 1.0, 60.0);
    let wire = length(reader, &f, "wire", 0.2, 6.0);
    match Ring::new(outside?, wire?) {
        Ok(ring) => Some(ring),
        Err(error) => {
            let found = detail!(
                "wrong-ring",
                "a ring {outside} across can't be made of {wire} wire: the wire must be thicker than nothing and thinner \
                 than half the ring",
                outside = error.outside.to_string(),
                wire = error.wire.to_string()
            );
            reader.wrong(node.at, found, detail!("right-ring", "give outside and wire as measured"));
            None
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::craft::{LinearDensity, Mass};

    fn one<T: FromStr<Err = QuantityError> + std::fmt::Debug>(text: &str) -> QuantityError {
        text.parse::<T>().unwrap_err()
    }

    /// A quantity says the same of itself in the terminal as a file's mistake does.
    #[test]
    fn a_mistake_says_what_the_quantity_itself_says() {
        let all = [
            one::<Length>("24"),
            one::<Length>("101m"),
            one::<Length>("41awg"),
            one::<Length>("9swg"),
            one::<Mass>("3"),
            one::<Mass>("101kg"),
            one::<LinearDensity>("3g"),
            one::<LinearDensity>("100001g/m"),
        ];
        for error in all {
            let said = format!("{} is not {}; {}", error.found, wanted(error.wanted), example(error.wanted));
            assert_eq!(said, error.to_string());
        }
        let ring = Ring::new(Length::from_mm(5.0), Length::from_mm(3.0)).unwrap_err();
        let (mut reader, node) = Reader::open("f", "(outside: \"5mm\", wire: \"3mm\")");
        assert_eq!(super::ring(&mut reader, &node.unwrap()), None);
        assert_eq!(reader.mistakes[0].found.english(), ring.to_string());
    }
}
