//! The battery, as Linux tells of it. Source of the names and values: the kernel's documentation of its interfaces,
//! `Documentation/ABI/testing/sysfs-class-power` (from memory).

use std::{fs, path::Path};

use serde::{Deserialize, Serialize};

/// Where Linux tells of power supplies.
const SUPPLIES: &str = "/sys/class/power_supply";
/// So full a battery lasts through a rush no longer, in percent (common practice, no source).
const LOW_PERCENT: u8 = 20;

/// How full the machine's battery is, and whether a charger is plugged in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Battery {
    /// How full, in percent.
    pub percent: u8,
    /// Power comes from outside.
    pub plugged_in: bool,
}

impl Battery {
    /// This machine's; none where it has none, or does not tell.
    pub fn of_this_machine() -> Option<Self> {
        Self::told_in(Path::new(SUPPLIES))
    }

    /// Whether the seller has to do something soon.
    pub const fn is_low(self) -> bool {
        self.percent <= LOW_PERCENT && !self.plugged_in
    }

    fn told_in(folder: &Path) -> Option<Self> {
        let mut percents: Vec<u32> = Vec::new();
        let (mut fed, mut drained) = (false, false);
        for supply in fs::read_dir(folder).ok()?.flatten() {
            let says = |name: &str| fs::read_to_string(supply.path().join(name)).unwrap_or_default().trim().to_owned();
            // A mouse or a pen has a battery of its own.
            if says("scope") == "Device" {
                continue;
            }
            if says("type") == "Battery" {
                percents.extend(says("capacity").parse::<u32>().ok().map(|percent| percent.min(100)));
                drained |= says("status") == "Discharging";
            } else {
                fed |= says("online") == "1";
            }
        }
        let count = u32::try_from(percents.len()).ok().filter(|count| *count > 0)?;
        let percent = u8::try_from(percents.iter().sum::<u32>() / count).unwrap_or(100);
        // A charger that gives less than is used counts as none.
        Some(Self { percent, plugged_in: !drained && (fed || percent == 100) })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn machine(supplies: &[(&str, &[(&str, &str)])]) -> Option<Battery> {
        let folder = tempfile::tempdir().unwrap();
        for (name, files) in supplies {
            fs::create_dir(folder.path().join(name)).unwrap();
            for (file, text) in *files {
                fs::write(folder.path().join(name).join(file), format!("{text}\n")).unwrap();
            }
        }
        Battery::told_in(folder.path())
    }

    /// As laptops and tablets tell it (values of the kernel's documentation, from memory).
    #[test]
    fn a_battery_is_read_as_the_system_tells_it() {
        let battery = |percent, plugged_in| Some(Battery { percent, plugged_in });
        let full: &[_] = &[("type", "Battery"), ("capacity", "100"), ("status", "Full")];
        let going: &[_] = &[("type", "Battery"), ("capacity", "20"), ("status", "Discharging"), ("scope", "System")];
        let filling: &[_] = &[("type", "Battery"), ("capacity", "19"), ("status", "Charging")];
        let (on, off): (&[_], &[_]) = (&[("type", "Mains"), ("online", "1")], &[("type", "Mains"), ("online", "0")]);
        let mouse: &[_] = &[("type", "Battery"), ("scope", "Device"), ("capacity", "3"), ("status", "Discharging")];
        assert_eq!(machine(&[]), None, "a desktop computer");
        assert_eq!(machine(&[("AC", on), ("hidpp_battery_0", mouse)]), None, "a mouse's is not the machine's");
        assert_eq!(machine(&[("AC", on), ("BAT0", full)]), battery(100, true));
        assert_eq!(machine(&[("AC", on), ("BAT0", filling)]), battery(19, true));
        assert_eq!(machine(&[("AC", off), ("BAT0", going), ("mouse", mouse)]), battery(20, false));
        assert_eq!(machine(&[("AC", on), ("BAT0", going)]), battery(20, false), "the charger is too weak");
        assert_eq!(machine(&[("AC", off), ("BAT0", full), ("BAT1", going)]), battery(60, false), "two batteries");
        assert!(!battery(19, true).unwrap().is_low() && !battery(21, false).unwrap().is_low());
        assert!(battery(20, false).unwrap().is_low());
        assert_eq!(machine(&[("BAT0", &[("type", "Battery"), ("capacity", "much")])]), None);
    }
}
