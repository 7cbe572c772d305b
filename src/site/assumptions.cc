// The table of assumptions. A range here is what a person would say who knows the trade but has not seen the site; the
// reason tells what would narrow it. Where no source is named the figure is common practice.
#include "site/assumptions.h"

namespace wellproof {

std::vector<PlainAssumption> const& plain_assumptions() {
  static std::vector<PlainAssumption> const list{
      {"well.season_drop", "0 .. 5 .. 20 ft", "dry season unknown; ask what the level was in the driest month"},
      {"well.casing", "4 .. 6 .. 6.25 in", "most private wells are cased in 6 in, some in 4; the well cap tells"},
      {"well.test_time", "1 .. 2 .. 8 h", "a driller's test mostly lasts an hour or more; the log tells"},
      {"well.water_temperature", "8 .. 20 °C", "ground water stands near the year's mean air temperature"},

      {"pump.wear", "0 .. 0.02 .. 0.12", "age of the pump unknown"},
      {"pump.dry_power", "0.08 .. 0.15", "bearings, seal rings and motor liquid; common practice, no source"},
      {"pump.least_submergence", "0.5 .. 2 ft", "depends on the intake screen; common practice, no source"},
      {"pump.diameter", "3.7 .. 3.9 in", "pump for a 4-in well"},

      {"well.storativity", "0.00005 .. 0.0003 .. 0.005", "confined formations (freeze_cherry_1979)"},
      {"well.linear_loss", "0 s/m2", "counted as part of the formation unless a step test told them apart"},
      {"well.quadratic_loss", "0 .. 2000 .. 15000 s2/m5",
       "a good bore has below 1800, a clogged one above 14,000 (walton_1962)"},
      {"well.boundary_distance", "100 .. 300 .. 1500 ft", "the border was named without its distance"},

      {"motor.winding_limit", "155 °C", "insulation class F, the usual one for these motors"},

      {"drive.top_frequency", "80 Hz", "the ceiling is derived from the site; a drive that can less must be told"},
      {"drive.efficiency", "0.91 .. 0.96", "drives of 3 to 10 hp at full load lie at 0.94 to 0.96"},
      {"drive.sample_rate", "20 Hz", "how often the controller acts, unless its manual says otherwise"},
      {"drive.rest_step", "1 min", "whole minutes"},
      {"drive.ambient", "0 .. 40 °C", "pump house or basement; up to 40 °C drives carry their rating"},

      {"cable.temperature", "10 .. 40 °C", "drop cable in water, the rest in air"},

      {"pipe.minor_loss", "2 .. 15", "check valves, elbows and tees of the run not counted"},

      {"tank.polytropic", "1 .. 1.2 .. 1.4", "gas neither keeps its temperature nor its heat"},
      {"tank.rating", "100 .. 150 psi", "printed on the tank; 100 psi is the least usual"},

      {"sensor.gain_error", "-0.01 .. 0.01", "1 % of reading, the common grade"},
      {"sensor.zero_error", "-1 .. 1 psi", "1 % of a 100-psi span"},
      {"sensor.lag", "0.02 .. 0.2 s", "transducer and input filter; a long snubber is slower"},
      {"sensor.noise", "0.05 .. 0.3 psi", "flow noise and the input's own"},
      {"sensor.resolution", "0.02 .. 0.1 psi", "ten to twelve bits over the span"},

      {"demand.least_draw", "0.3 .. 0.5 .. 0.8 gpm", "a tap opened a little; a lavatory faucet gives about 1 gpm"},
      {"demand.run_after_rest", "5 min", "a shower's worth; more asks for a longer rest"},
      {"demand.daily_use", "100 .. 150 .. 350 gal", "metered houses use about 140 gal a day indoors (reus_2016)"},
      {"demand.leak", "0 .. 0.01 .. 0.1 gpm", "most houses drip: some 15 gal a day, a running toilet ten times that"},

      {"zone.pressure", "30 .. 50 psi", "spray heads want about 30 psi, rotors up to 50"},
      {"zone.time", "15 .. 60 min", "one zone of a programme; the timer tells"},

      {"limits.fittings_rating", "100 .. 150 psi", "filters, softeners and switches are the weak parts of a house"},
      {"limits.relief", "0 psi", "no relief valve told: the careful side"},
      {"limits.water_loss", "200 .. 500 gal", "what may run away in a burst is the owner's to say"},
      {"limits.altitude", "0 .. 2500 ft", "place unknown"},
  };
  return list;
}

std::vector<FollowingAssumption> const& following_assumptions() {
  static std::vector<FollowingAssumption> const list{
      {"well.fracture", "none: the water comes in all along"},
      {"well.boundary_distance", "not used without a boundary; else 100 to 1500 ft"},
      {"well.depth", "10 to 80 ft below the pump, and below the level of the test"},
      {"pump.rated_flow", "best-efficiency flow of the curve"},
      {"pump.rated_power", "largest of the curve; without one between the motor's rated and its service-factor power"},
      {"pump.rated_head", "the curve at rated flow; without one what power and stages pay for at a typical efficiency"},
      {"pump.curve_speed", "rotor speed of a two-pole motor at the motor's frequency"},
      {"pump.stages", "from the rated head, about 6 m each"},
      {"pump.flow_factor", "ISO 9906 grade 3B: 9 % on a given curve; 12 % on a typical one"},
      {"pump.head_factor", "ISO 9906 grade 3B: 7 % on a given curve; 14 % on a typical one, 10 % if stages are told"},
      {"pump.power_factor", "ISO 9906 grade 3B: 9 % on a given curve; 12 % on a typical one"},
      {"pump.water_held", "half a litre to two, with the number of stages"},
      {"motor.power", "smallest usual rating whose service-factor power covers the pump"},
      {"motor.service_factor", "typical of the rating"},
      {"motor.voltage", "230 V, or that of the supply"},
      {"motor.frequency", "60 Hz, or 50 Hz on a 380 to 420 V motor"},
      {"motor.full_load_current", "from what is known of power, volts, efficiency and power factor"},
      {"motor.service_factor_current", "typical of rating and voltage, or in proportion to the full-load current"},
      {"motor.efficiency", "typical of the rating, or from the currents if the power factor is known"},
      {"motor.power_factor", "typical of the rating, or from the currents"},
      {"motor.speed", "slip of 3.5 to 5 % against two poles"},
      {"motor.no_load_current", "0.44 to 0.55 of the service-factor current"},
      {"motor.locked_rotor_current", "4 to 6 times the service-factor current"},
      {"drive.rated_current", "1.05 to 1.5 of the service-factor current"},
      {"cable.size", "smallest gauge with at most 3 % drop at the service-factor current, give or take a size"},
      {"cable.length", "pump setting and 20 to 100 ft more"},
      {"supply.voltage", "ANSI C84.1 range B about 240 or 480 V, or 10 % about 400 V"},
      {"supply.frequency", "that of the motor"},
      {"pipe.inside_diameter", "schedule 40 of a usual size for the pump's flow; a run that gives its size has that"},
      {"pipe.length", "drop: the pump's setting; yard 20 to 150 ft; house 40 to 120 ft"},
      {"pipe.rise", "drop: none, the depths tell; yard -5 to 10 ft; house 3 to 20 ft, unless tank and outlet say it"},
      {"pipe.roughness", "of the kind of pipe, new to old"},
      {"pipe.rating", "class of the kind and size at 73 °F; plastic carries less in heat or when threaded"},
      {"tank.volume", "2 to 20 gal on a pressure sensor, 20 to 86 gal on a pressure switch"},
      {"tank.precharge", "0.6 to 0.8 of the pressure wanted at the tank"},
      {"tank.elevation", "sum of the rises of the yard pipes"},
      {"sensor.full_scale", "smallest usual span of at least 1.6 times the pressure wanted at the tank"},
      {"demand.outlet_rise", "sum of the rises of the house pipes"},
      {"demand.peak_draw", "from the fixture units; without them 6 to 13 gpm"},
      {"demand.longest_run", "an hour or two at the hose, or the zones one after another and half as long again"},
  };
  return list;
}

}  // namespace wellproof
