// Lo que el núcleo dice al explicar una historia de paros.
import type { Forms } from "./translated";
import { forms as checks } from "./es_core_checks";
import { faults } from "./es_lists";

const kinds: Forms = [
  ["dry run", "en seco"],
  ["closed discharge", "por línea cerrada"],
  ["long run", "por marcha demasiado larga"],
  ["too much current", "por sobrecorriente"],
  ["low volts", "por tensión baja"],
  ["drive too hot", "por variador caliente"],
  ["sensor lost", "sin sensor"],
  ["outside contact", "por contacto abierto"],
  ["high pressure", "por presión alta"],
];

/// Lo que se nota, y lo que se buscó y no está.
const noticed: Forms = [
  ["cannot hold the pressure", "no mantiene la presión"],
  ["no water comes", "no sale agua"],
  ["never sleeps", "no duerme nunca"],
  ["starts again and again with all taps shut", "arranca una y otra vez con las llaves cerradas"],
  ["the pressure swings while water is drawn", "la presión oscila mientras se consume"],
  ["the pressure is too high", "la presión es demasiado alta"],
  ["something gets hot", "algo se calienta"],
  ["it is noisy", "hace ruido"],
  ["air comes out of the taps", "sale aire por las llaves"],
  ["there is sand in the water", "hay arena en el agua"],
  ["the ground is wet where it should not be", "el suelo está mojado donde no debe"],
  ["not: cannot hold the pressure", "sí mantiene la presión"],
  ["not: no water comes", "sí sale agua"],
  ["not: never sleeps", "sí duerme"],
  ["not: starts again and again with all taps shut", "no arranca una y otra vez con las llaves cerradas"],
  ["not: the pressure swings while water is drawn", "la presión no oscila mientras se consume"],
  ["not: the pressure is too high", "la presión no es demasiado alta"],
  ["not: something gets hot", "nada se calienta"],
  ["not: it is noisy", "no hace ruido"],
  ["not: air comes out of the taps", "no sale aire por las llaves"],
  ["not: there is sand in the water", "no hay arena en el agua"],
  ["not: the ground is wet where it should not be", "el suelo no está mojado donde no debe"],
];

/// Lo que cambió, en las palabras que ofrece la página; y en las de la historia de ejemplo.
const changes: Forms = [
  ["a new lawn", "césped nuevo"],
  ["more people", "más gente"],
  ["a new filter", "un filtro nuevo"],
  ["a plumber was here", "vino el plomero"],
  ["an electrician was here", "vino el electricista"],
  ["new settings", "ajustes nuevos"],
  ["a new cable or splice", "cable o empalme nuevo"],
  ["digging", "se excavó"],
  ["a storm", "una tormenta"],
  ["lightning", "rayos"],
  ["a generator", "un generador"],
  ["frost", "heladas"],
  ["heat", "mucho calor"],
  ["a drought", "sequía"],
  ["blasting nearby", "voladuras cerca"],
  ["a float switch", "un flotador"],
  ["no rain since June, a dry summer", "sin lluvia desde junio, un verano seco"],
];

/// Qué tan grave sería, en el sorteo que mejor concuerda.
const severities: Forms = [
  ["the water at rest stands deeper by {}", "el agua en reposo está {} más honda"],
  ["the well gives, with the water at the pump, {}", "el pozo da {} con el agua a la altura de la bomba"],
  ["at full speed the screen passes about {}", "la rejilla deja pasar alrededor de {} a toda velocidad"],
  ["for hours a day is drawn besides {}", "durante horas cada día se consume, además, {}"],
  ["of the best flow runs back inside the pump the share {}", "dentro de la bomba se regresa una fracción de {} del mejor caudal"],
  ["the pump asks for so many times its shaft power: {}", "la bomba pide {} veces su potencia en el eje"],
  ["through the hole run back about {}", "por el agujero se regresa alrededor de {}"],
  ["past the check valve run back about {}", "por la válvula de retención se regresa alrededor de {}"],
  ["the tank's air stands, with no water in it, at {}", "el aire del tanque sin agua está a {}"],
  ["at the target leak {}", "a la presión a mantener se fuga {}"],
  [
    "of the run-out flow of the pump is lost about the share {}",
    "se pierde una fracción de alrededor de {} de lo que la bomba da a descarga libre",
  ],
  ["the valve is open by the share {}", "la válvula está abierta en una fracción de {}"],
  ["it thaws after midnight in {}", "el deshielo llega {} después de la medianoche"],
  ["at rest the supply stands at {}", "con la bomba parada la red da {}"],
  ["the power is gone on a share of days of {}", "se va la luz en una fracción de {} de los días"],
  [
    "the volts at the motor differ from their mean by the share {}",
    "las tensiones en el motor se apartan de su promedio en una fracción de {}",
  ],
  ["the cable has so many times its resistance: {}", "el cable tiene {} veces su resistencia"],
  [
    "the air at the heat sink is warmer by a difference (in kelvin) of {}",
    "el aire junto al disipador está más caliente, con una diferencia (en kelvin) de {}",
  ],
  ["the sensor follows only after {}", "el sensor sigue a la presión con {} de atraso"],
  ["the sensor reads too much by {}", "el sensor mide {} de más"],
  ["the sensor reads too much by -{}", "el sensor mide {} de menos"],
  ["on a day that it happens the signal breaks so often: {}", "el día en que ocurre, la señal se corta este número de veces: {}"],
  ["on a day that it happens the contact opens so often: {}", "el día en que ocurre, el contacto se abre este número de veces: {}"],
  ["the limit is set at {}", "el límite está puesto en {}"],
  ["the sleep speed is set at {}", "la velocidad de dormir está puesta en {}"],
  ["the threshold is set at {}", "el umbral está puesto en {}"],
  ["the rest is set at {}", "el descanso está puesto en {}"],
  ["the gain is so many times what it should be: {}", "la ganancia es {} veces la que debería ser"],
];

const titles: Forms = [
  ["The water stands deeper", faults.level_fallen!],
  ["The well gives less", faults.yield_fallen!],
  ["The pump's intake is clogged", faults.intake_clogged!],
  ["More is drawn than the well gives", faults.more_demand!],
  ["The pump is worn", faults.pump_worn!],
  ["The pump drags", faults.pump_dragging!],
  ["The drop pipe has a hole", faults.drop_pipe_hole!],
  ["The check valve leaks", faults.check_valve_leaks!],
  ["The tank has lost its air", faults.tank_charge_lost!],
  ["Water leaks behind the tank", faults.leak_in_house!],
  ["A line has burst", faults.line_burst!],
  ["A valve before the tank is shut", faults.valve_shut!],
  ["The line freezes", faults.line_frozen!],
  ["The volts are low", faults.volts_low!],
  ["The power goes away", faults.power_outages!],
  ["The volts at the motor are uneven", faults.volts_uneven!],
  ["The cable is too thin", faults.cable_thin!],
  ["The drive gets too hot", faults.drive_heated!],
  ["The sensor's port is plugged", faults.sensor_plugged!],
  ["The sensor reads wrong", faults.sensor_drifted!],
  ["The sensor's wire is bad", faults.sensor_wire!],
  ["The outside contact opens", faults.outside_contact!],
  ["The current limit is wrong for the motor", faults.current_limit_wrong!],
  ["The sleep speed is below the zero-flow speed", faults.sleep_speed_low!],
  ["Thresholds or ceiling are set wrong", faults.thresholds_wrong!],
  ["The rest is too short", faults.rest_short!],
  ["The regulator is too hot", faults.regulator_hot!],
  ["None of these", faults.none!],
];

/// Lo que se lee en un instrumento.
const shows: Forms = [
  ["the gauge, all taps shut", "el manómetro, con todas las llaves cerradas"],
  ["the drive's pressure, all taps shut", "la presión en el variador, con todas las llaves cerradas"],
  ["the gauge, a tap half open", "el manómetro, con una llave a medio abrir"],
  ["the drive's pressure, a tap half open", "la presión en el variador, con una llave a medio abrir"],
  ["the speed, a tap half open", "la velocidad, con una llave a medio abrir"],
  ["the current, a tap half open", "la corriente, con una llave a medio abrir"],
  ["the supply's volts under load", "la tensión de la red con carga"],
  ["the heat sink, a tap half open", "el disipador, con una llave a medio abrir"],
  ["the water level while it runs", "la profundidad del agua en marcha"],
  ["the gauge, all taps open", "el manómetro, con todas las llaves abiertas"],
  ["the speed, all taps open", "la velocidad, con todas las llaves abiertas"],
  ["the current, all taps open", "la corriente, con todas las llaves abiertas"],
  ["the flow, all taps open", "el caudal, con todas las llaves abiertas"],
  ["the fall of the gauge in ten minutes, all taps shut", "lo que baja el manómetro en diez minutos, con todas las llaves cerradas"],
  ["the same with the valve behind the tank shut", "lo que baja el manómetro en diez minutos, con la válvula después del tanque cerrada"],
  ["the water level at rest", "la profundidad del agua en reposo"],
  ["the air in the drained tank", "el aire del tanque vaciado"],
  ["the unbalance of the three currents", "el desequilibrio de las tres corrientes"],
  ["the speed with nothing drawn", "la velocidad sin consumo"],
  ["the current with nothing drawn", "la corriente sin consumo"],
];

export const forms: Forms = [
  ...kinds.flatMap(([kind, is]): Forms => [
    [`{} ${kind}`, `{} ${is}`],
    [`{} ${kind}, {}`, `{} ${is}, {}`],
    [`One stop, {} ago: ${kind}.`, `Un paro, hace {}: ${is}.`],
  ]),
  ...noticed.flatMap(([sign, is]): Forms => [
    [sign, is],
    [`${sign}, {}`, `${is}, {}`],
  ]),
  ...changes.flatMap(([change, is]): Forms => [
    [`"${change}": the odds of "{}" are taken as {} times higher beforehand.`, `«${is}»: las probabilidades de «{}» se toman de antemano {} veces más altas.`],
    [`"${change}": the odds of "{}" are taken as {} times lower beforehand.`, `«${is}»: las probabilidades de «{}» se toman de antemano {} veces más bajas.`],
  ]),
  ...severities.map(([says, is]): Forms[number] => [`In the draw that fits best ${says}.`, `En el sorteo que mejor concuerda, ${is}.`]),
  ...titles,
  ...shows,
  ...checks,

  // Lo que se contó.
  ["No stop was told.", "No se contó ningún paro."],
  ["{} stops within {}, the newest {} ago: {}.", "{} paros en {}, el más reciente hace {}: {}."],
  ["{} of {} between nine in the evening and six in the morning.", "{} de {} entre las nueve de la noche y las seis de la mañana."],
  ["The stops were not in the order of time; they have been put in order.", "Los paros no estaban en orden de tiempo; se ordenaron."],
  ["One stop stood there twice and count once.", "Un paro estaba anotado dos veces y cuenta una sola vez."],
  ["Some stops stood there twice and count once.", "Algunos paros estaban anotados dos veces y cuentan una sola vez."],
  [
    "Of {} of {} stops the time of day is not known; when in the day they came does not count for these.",
    "De {} de {} paros no se sabe la hora del día; en ellos no cuenta a qué hora llegaron.",
  ],
  [
    'Of {} of {} stops the time of day is not known; say what the time is now: "now: …".',
    "De {} de {} paros no se sabe la hora del día; diga qué hora es ahora: «now: …».",
  ],
  ["taken as derived for this site", "se toman los calculados para este sitio"],
  ["{}; the others as derived", "{}; los demás, los calculados"],
  ["{} as found, by {}", "{} según lo encontrado, de {}"],
  ["{} as found, by {}; {}", "{} según lo encontrado, de {}; {}"],
  ["as in {}", "como en {}"],
  ["as in {}; {}", "como en {}; {}"],
  ["1 as given", "1 dado a mano"],
  ["{}; 1 as given", "{}; 1 dado a mano"],
  ["{} as given", "{} dados a mano"],

  // Lo más probable.
  ["Likeliest: {} ({}).", "Lo más probable: «{}» ({})."],
  ["Not decided yet: {} ({}), {} ({}).", "Todavía no se decide: «{}» ({}), «{}» ({})."],
  ["Nothing in the list fits well: none of these is the likeliest ({}).", "Nada de la lista concuerda bien: lo más probable es que no sea ninguna de estas ({})."],
  ["over 99 %", "más de 99 %"],
  ["under 1 %", "menos de 1 %"],

  // A favor y en contra.
  ["the kinds of stop: {}", "las clases de paro: {}"],
  ["the hours: {} of {} between nine in the evening and six in the morning", "las horas: {} de {} entre las nueve de la noche y las seis de la mañana"],
  ["the gaps: how long the newest is past", "los intervalos: cuánto hace del paro más reciente"],
  [
    "the gaps: {} of {} follow the one before after the rest ({})",
    "los intervalos: en {} de {}, el paro sigue al anterior justo después del descanso ({})",
  ],
  ["that it did not stop at all", "que no se paró ni una vez"],
  ["what is noticed: {}", "lo que se nota: {}"],
  ["{}: {} read, {} expected, {} in a sound plant", "{}: se lee {}, con esta causa se espera {}, en una instalación sana {}"],
  ["the checks made: {}", "las comprobaciones hechas: {}"],

  // Si un ajuste lo habría evitado.
  [
    "{} from {} to {}, as planned: {} stops a day become {}, over {} of the likeliest days lived again.",
    "{} de {} a {}, como en el plan: {} paros al día pasan a {}, en {} de los días más probables, simulados otra vez.",
  ],
  [
    "{} from {} to {}: {} stops a day become {}, over {} of the likeliest days lived again; fewer stops do not mend what is behind them, and the guard watches less.",
    "{} de {} a {}: {} paros al día pasan a {}, en {} de los días más probables, simulados otra vez; menos paros no remedian lo que hay detrás, y la guarda vigila menos.",
  ],
  ["The cause has to be known before a setting can be tried.", "Hay que conocer la causa antes de poder probar un ajuste."],
  [
    "No single setting would have halved these stops; {} tried, each over {} likely days lived again. The drive is right to stop: mend the cause.",
    "Ningún ajuste por sí solo habría reducido estos paros a la mitad; se probaron {}, cada uno en {} días probables, simulados otra vez. " +
      "El variador hace bien en parar: remedie la causa.",
  ],
  ["The likely days of this cause hold no stop that a setting could avoid.", "Los días probables con esta causa no traen ningún paro que un ajuste pueda evitar."],
];
