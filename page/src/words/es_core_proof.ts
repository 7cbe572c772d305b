// Lo que el núcleo dice de la prueba: criterios, peores corridas, márgenes, cómo medir, y el porvenir del pozo.
import { forms as visit } from "./es_core_visit";
import { scenarios } from "./es_lists";
import type { Forms } from "./translated";

/// Los criterios: qué se exige de una corrida.
const criteria: Forms = [
  ["pressure at the highest outlet kept, but for some seconds", "la presión en la llave más alta debe mantenerse, salvo unos segundos"],
  ["does not stop for nothing", "no debe parar sin motivo"],
  ["asleep soon after the last tap has closed", "debe dormir poco después de cerrarse la última llave"],
  ["is not left turning against its check valve", "no debe quedarse girando contra su válvula de retención"],
  ["rests for most of a quiet time", "debe descansar la mayor parte del tiempo sin consumo"],
  ["does not start too often", "no debe arrancar demasiadas veces"],
  ["winding within its insulation class", "el devanado no debe pasar de su clase de aislamiento"],
  ["pressure never above the weakest rating", "la presión nunca debe pasar de lo que aguanta la pieza más débil"],
  [
    "pressure at the pump within the classes of drop and yard pipe",
    "la presión en la bomba no debe pasar de lo que aguantan el tubo de bajada y el del pozo al tanque",
  ],
  ["water held in the pump not heated", "el agua que queda en la bomba no debe calentarse"],
  ["not more water lost than the owner can bear", "no debe perderse más agua de la que el dueño puede permitirse"],
  ["stops when the water runs away", "debe parar cuando el agua se escapa"],
  ["stops when the water runs back", "debe parar cuando el agua se regresa al pozo"],
  ["stops before the shut line harms the pump", "debe parar antes de que la línea cerrada dañe la bomba"],
  ["stops when the well is overdrawn", "debe parar cuando el pozo está sobreexplotado"],
  ["stops when the pump runs dry", "debe parar cuando la bomba gira en seco"],
  ["stops when the water is gone", "debe parar cuando se acabó el agua"],
  ["stops when the intake is closed", "debe parar cuando se tapa la toma"],
  ["stops when the sensor is lost", "debe parar cuando se pierde el sensor"],
  ["lets go when the supply is lost", "debe soltar la bomba cuando se va la luz"],
  ["lets go when the contact says no", "debe soltar la bomba cuando el contacto dice que no"],
  ["line filled and at pressure in the end", "la línea debe quedar llena y con presión al final"],
  ["line filled and at pressure again", "la línea debe quedar otra vez llena y con presión"],
  // Lo que se mide, y de dónde viene el límite.
  ["least pressure at the tank's tee", "menor presión en la conexión del tanque"],
  ["least pressure at the highest outlet", "menor presión en la llave más alta"],
  ["most pressure at the tank's tee", "mayor presión en la conexión del tanque"],
  ["most pressure at the pump", "mayor presión en la bomba"],
  ["time with too little pressure at the highest outlet", "tiempo con poca presión en la llave más alta"],
  ["stops", "paros"],
  ["starts", "arranques"],
  ["time until it has stopped", "tiempo hasta que para"],
  ["time until it sleeps", "tiempo hasta que duerme"],
  ["time turning with no flow", "tiempo girando sin caudal"],
  ["time with the pump turning", "tiempo con la bomba girando"],
  ["hottest winding", "devanado más caliente"],
  ["hottest water in the pump", "agua más caliente en la bomba"],
  ["water lost", "agua perdida"],
  ["at least", "al menos"],
  ["at most", "como máximo"],
  ["common practice, no source", "práctica común, sin fuente"],
  ["NEMA MG 1 insulation classes", "clases de aislamiento de NEMA MG 1"],
  ["the rating stated", "la clase que se indicó"],
  ["stated for the site", "dicho para el sitio"],
  ["ASTM D1785 derating of PVC with temperature, from memory", "reducción del PVC con la temperatura según ASTM D1785, de memoria"],
];

/// La peor corrida, y qué tan lejos quedó del límite.
const worst: Forms = [
  ["draw {}: {}: {} against {}", "sorteo {}: {}: {} contra un límite de {}"],
  ["draw {}: {}: {} against {} with {}", "sorteo {}: {}: {} contra un límite de {}, con {}"],
  ["draw {}: the run ended as {}", "sorteo {}: la corrida no llegó al final ({})"],
  ["draw {}: the run ended as {} with {}", "sorteo {}: la corrida no llegó al final ({}), con {}"],
  ["chatter", "los sucesos se repetían sin avanzar"],
  ["no convergence", "el cálculo no convergió"],
  ["{} to rating", "a {} de la presión que se aguanta"],
  ["{} to harm", "a {} del daño"],
  ["{} to spare", "{} de sobra"],
  ["{} beyond", "{} más allá del límite"],
  ["{} starts to spare", "{} arranques de sobra"],
  ["1 starts to spare", "1 arranque de sobra"],
  ["{} starts too many", "{} arranques de más"],
  ["1 starts too many", "1 arranque de más"],
  ["{} too many", "{} paros de más"],
  ["1 too many", "1 paro de más"],
  ["no stop", "ningún paro"],
  ["not in the run", "no ocurrió en la corrida"],
  ["not computed", "no calculado"],
  [
    "first fails at {}: {} spreads from the middle, about 1 site in {}",
    "falla por primera vez con {}: a {} desviaciones del centro, cerca de 1 sitio de cada {}",
  ],
  // Listas de claves con cifras; las que llevan signo o una unidad poco usual.
  ["{}, {}", "{}, {}"],
  ["{} -{}", "{} −{}"],
  ["{} d2/m5", "{} d2/m5"],
  ["> 999", "> 999"],
  ["< −999", "< −999"],
];

/// El dictamen, con sus plurales.
const verdict: Forms = [
  ["{} runs", "{} corridas"],
  ["1 run", "1 corrida"],
  ["{} scenarios", "{} escenarios"],
  ["1 scenario", "1 escenario"],
  ["1 draw", "1 sorteo"],
  ["Nothing was run, so nothing is shown.", "No se corrió nada, así que nada queda mostrado."],
  ["{} in {} over {} of what is not known: none failed.", "{} en {}, sobre {} de lo que no se sabe: ninguna falló."],
  [
    "In no scenario more than {} of such sites would fail (95 % confidence).",
    "En ningún escenario fallarían más del {} de los sitios como este (con 95 % de confianza).",
  ],
  ["{} of {} failed, in {} of {}, over {} of what is not known.", "Fallaron {} de {}, en {} de {}, sobre {} de lo que no se sabe."],
  ["1 of {} failed, in {} of {}, over {} of what is not known.", "Falló 1 de {}, en {} de {}, sobre {} de lo que no se sabe."],
  [
    "Up to {} of such sites would fail in the worst scenario (95 % confidence).",
    "En el peor escenario fallarían hasta el {} de los sitios como este (con 95 % de confianza).",
  ],
  ["Smallest margin {}, in {}.", "El menor margen es {}, en {}."],
  ["{} could not be computed to the end and count as failed.", "{} no se pudieron calcular hasta el final y cuentan como falladas."],
  [
    "Smallest margin {}, in {}. 1 run could not be computed to the end and count as failed.",
    "El menor margen es {}, en {}. 1 corrida no se pudo calcular hasta el final y cuenta como fallada.",
  ],
];

/// Qué tan lejos están los límites.
const margins: Forms = [
  [
    "{} to the nearest false stop: {} a pump at work takes {} at the least (draw {}); {} is {}.",
    "A {} del paro en falso más cercano: {} una bomba en trabajo toma {} como mínimo (sorteo {}); {} es {}.",
  ],
  [
    "{} past the nearest false stop: {} a pump at work takes {} at the least (draw {}); {} is {}.",
    "Rebasado en {} el paro en falso más cercano: {} una bomba en trabajo toma {} como mínimo (sorteo {}); {} es {}.",
  ],
  ["at its slowest", "a su velocidad más lenta"],
  ["with its pressure lost", "con la presión perdida"],
  ["No false stop for low current: both amps guards are off.", "Ningún paro en falso por corriente baja: las dos guardas de corriente están apagadas."],
  ["No false stop for low power: both power guards are off.", "Ningún paro en falso por potencia baja: las dos guardas de potencia están apagadas."],
  [
    "No false stop to measure: nowhere that the amps guards look does water flow.",
    "Ningún paro en falso que medir: donde vigilan las guardas de corriente no corre agua en ningún caso.",
  ],
  [
    "No false stop to measure: nowhere that the power guards look does water flow.",
    "Ningún paro en falso que medir: donde vigilan las guardas de potencia no corre agua en ningún caso.",
  ],
  [
    "{} to harm: {}; it is stopped {} after the guards begin to look (draw {}).",
    "A {} del daño: {}; se para {} después de que las guardas empiezan a vigilar (sorteo {}).",
  ],
  [
    "{} past harm: {}; it is stopped {} after the guards begin to look (draw {}).",
    "{} después del daño: {}; se para {} después de que las guardas empiezan a vigilar (sorteo {}).",
  ],
  ["Nothing stops the pump before harm: {}, and no guard acts (draw {}).", "Nada para la bomba antes del daño: {}, y ninguna guarda actúa (sorteo {})."],
  ["a bearing without water is taken to bear {} (common practice)", "se supone que un cojinete sin agua aguanta {} (práctica común)"],
  ["against a shut line the water in the pump comes to {} in {}", "contra una línea cerrada el agua en la bomba llega a {} en {}"],
  [
    "{} to the speed at which it will not sleep: soon after a peak the leak is held at up to {} (draw {}); {} is {}.",
    "A {} de la velocidad a la que ya no duerme: poco después de un consumo máximo, mantener la presión con la fuga pide hasta {} (sorteo {}); {} es {}.",
  ],
  [
    "{} past the speed at which it will not sleep: soon after a peak the leak is held at up to {} (draw {}); {} is {}.",
    "Rebasada en {} la velocidad a la que ya no duerme: poco después de un consumo máximo, mantener la presión con la fuga pide hasta {} (sorteo {}); {} es {}.",
  ],
  ["A pressure switch does not sleep by speed.", "Un presostato no duerme según la velocidad."],
  [
    "This drive does not sleep by speed: it nudges the pressure, whatever the speed.",
    "Este variador no duerme según la velocidad: tantea la presión, sea cual sea la velocidad.",
  ],
  ["{} to the rating, in {} (draw {}).", "A {} de lo que aguanta la pieza más débil, en {} (sorteo {})."],
  ["{} past the rating, in {} (draw {}).", "{} más de lo que aguanta la pieza más débil, en {} (sorteo {})."],
  ["No run was judged by a pressure rating.", "Ninguna corrida se juzgó por la presión que se aguanta."],
  ["A pressure switch does not regulate, so that it cannot hunt.", "Un presostato no regula, así que no puede oscilar."],
  [
    "{} to hunting: under an even draw the pressure settles in each of the {} draws looked at.",
    "A {} de oscilar: con un consumo parejo la presión se asienta en cada uno de los {} sorteos que se miraron.",
  ],
  [
    "{} to hunting: drawing {} % of the peak evenly the pressure swings by {} every {} s (draw {}); {} may pass (common practice).",
    "A {} de oscilar: con un consumo parejo de {} % del máximo la presión oscila {} cada {} s (sorteo {}); se toleran {} (práctica común).",
  ],
  [
    "{} past hunting: drawing {} % of the peak evenly the pressure swings by {} every {} s (draw {}); {} may pass (common practice).",
    "Oscila {} más de lo tolerable: con un consumo parejo de {} % del máximo la presión oscila {} cada {} s (sorteo {}); se toleran {} (práctica común).",
  ],
];

/// Cómo medir lo que más conviene medir.
const measuring: Forms = [
  ["Sound the well with a level tape after a night without pumping", "Sondee el pozo con una cinta de nivel tras una noche sin bombear"],
  [
    "Sound the well again at the end of the dry season, or ask neighbours and the state's nearest observation well",
    "Sondee el pozo otra vez al final de la temporada seca, o pregunte a los vecinos y consulte el pozo de observación más cercano del estado",
  ],
  ["Read the driller's log, or lower a weighted tape with the pump out", "Lea el registro del perforador, o baje una cinta con peso con la bomba afuera"],
  ["Measure across the casing with the cap off", "Mida el ademe de lado a lado con la tapa quitada"],
  [
    "Pump at one rate for some hours, log the level, and fit it (wellproof welltest)",
    "Bombee unas horas a un solo caudal, anote el nivel y ajústelo (wellproof welltest)",
  ],
  ["Pump at one rate for an hour and sound the level before and at the end", "Bombee una hora a un solo caudal y sondee el nivel antes y al final"],
  ["Time a bucket or read a meter while the well is pumped", "Tome el tiempo de una cubeta o lea un medidor mientras se bombea el pozo"],
  ["Sound the level at the end of an hour's pumping at one rate", "Sondee el nivel al final de una hora de bombeo a un solo caudal"],
  [
    "Draw the level down to the pump, throttle until it stands, and time a bucket",
    "Baje el nivel hasta la bomba, estrangule hasta que se quede quieto y tome el tiempo de una cubeta",
  ],
  ["Hold a thermometer under a tap that has run for ten minutes", "Ponga un termómetro bajo una llave que lleve diez minutos abierta"],
  ["Read the pump's plate or invoice", "Lea la placa o la factura de la bomba"],
  [
    "Read the pump's curve, or at full speed against a shut valve the pressure and level",
    "Lea la curva de la bomba, o la presión y el nivel a toda velocidad contra una válvula cerrada",
  ],
  ["Read the pump's plate or curve", "Lea la placa o la curva de la bomba"],
  ["Count the pipe at the pump's last pull, or read the log", "Cuente los tubos cuando se saque la bomba, o lea el registro de la última vez que se sacó"],
  [
    "At full speed with a tap wide open time a bucket and read pressure and level",
    "A toda velocidad y con una llave abierta del todo, tome el tiempo de una cubeta y lea la presión y el nivel",
  ],
  [
    "At full speed against a shut valve, for some seconds, read pressure and level",
    "A toda velocidad contra una válvula cerrada, por unos segundos, lea la presión y el nivel",
  ],
  [
    "At full speed with a tap wide open read the motor's power at the drive",
    "A toda velocidad y con una llave abierta del todo, lea la potencia del motor en el variador",
  ],
  [
    "At full speed compare flow and pressure with the curve at two openings",
    "A toda velocidad compare el caudal y la presión con la curva, con dos aperturas de la llave",
  ],
  ["Read the plate on the motor's lead or the control box", "Lea la placa en el cable del motor o en la caja de control"],
  ["Read the motor's plate", "Lea la placa del motor"],
  [
    "Read the current at full speed against a shut valve, for some seconds",
    "Lea la corriente a toda velocidad contra una válvula cerrada, por unos segundos",
  ],
  ["Ask for the motor's data sheet", "Pida la hoja de datos del motor"],
  ["Ask for the motor's data sheet, or read it at the drive's input", "Pida la hoja de datos del motor, o léalo en la entrada del variador"],
  ["Measure the run and add the setting of the pump", "Mida el recorrido y súmele la profundidad de la bomba"],
  [
    "Read the volts at the drive with the pump running, morning and evening",
    "Lea la tensión en el variador con la bomba en marcha, por la mañana y por la noche",
  ],
  ["Read the print on the pipe and look its size up", "Lea lo impreso en el tubo y busque su medida en una tabla"],
  ["Measure the run with a wheel or a tape", "Mida el tramo con una rueda de medir o una cinta"],
  [
    "Level it with a water hose or a phone's level along the run",
    "Nivélelo a lo largo del tramo con una manguera con agua o con el nivel de un teléfono",
  ],
  ["Count the fittings", "Cuente las conexiones"],
  ["Read pressure at both ends of the run at a known flow", "Lea la presión en los dos extremos del tramo con un caudal conocido"],
  ["Read the print on the pipe", "Lea lo impreso en el tubo"],
  ["Read the tank's plate", "Lea la placa del tanque"],
  ["Drain the tank and read its gas valve with a tyre gauge", "Vacíe el tanque y mida en su válvula de gas con un medidor de llantas"],
  ["Level from the casing to the tank's tee", "Nivele de la boca del ademe a la conexión del tanque"],
  ["Compare the reading with a good gauge near the target", "Compare la lectura con un buen manómetro cerca de la presión a mantener"],
  ["Read the sensor with the line open to the air", "Lea el sensor con la línea abierta al aire"],
  ["Watch the reading with the pump off", "Observe la lectura con la bomba parada"],
  ["Read the sensor's data sheet", "Lea la hoja de datos del sensor"],
  ["Level from the tank's tee to the highest outlet", "Nivele de la conexión del tanque a la llave más alta"],
  ["Time a litre at the smallest tap that matters", "Tome el tiempo de un litro en la llave más pequeña que importe"],
  [
    "Open what is used at once and time a bucket at each, or read a meter",
    "Abra lo que se usa a la vez y tome el tiempo de una cubeta en cada llave, o lea un medidor",
  ],
  [
    "With all taps shut and the pump off, time the fall of pressure, and reckon with the tank's volume",
    "Con todas las llaves cerradas y la bomba parada, tome el tiempo en que cae la presión y calcule con el volumen del tanque",
  ],
  ["Read a meter, or count the heads and their nozzles", "Lea un medidor, o cuente los aspersores y sus boquillas"],
  [
    "Read the marks on fittings and valves from casing to house",
    "Lea las marcas en las conexiones y válvulas, de la boca del ademe a la casa",
  ],
  ["Read the relief valve's tag", "Lea la etiqueta de la válvula de alivio"],
];

/// El porvenir del pozo.
const outlook: Forms = [
  [
    "For good: {} in 90 % of draws, which is {} a day, when it does not rain for a hundred days.",
    "De forma sostenida: {} en 90 % de los sorteos, es decir, {} al día, cuando no llueve en cien días.",
  ],
  ["The site's own day uses {}.", "Un día de este sitio usa {}."],
  [
    "In {} of {} draws that is more than the well gives for good, and no tank makes up for it.",
    "En {} de {} sorteos eso es más de lo que el pozo da de forma sostenida, y ningún tanque lo compensa.",
  ],
  ["The longest run: {} at {} leaves the pump its water in every draw.", "El uso continuo más largo: {} a {} deja a la bomba con agua en todos los sorteos."],
  [
    "The longest run: {} at {} is too long in {} of {} draws; the pump then loses its water, in 5 % of draws after {} already.",
    "El uso continuo más largo: {} a {} es demasiado en {} de {} sorteos; la bomba se queda entonces sin agua, en 5 % de los sorteos ya a los {}.",
  ],
  [
    "The site's own day: the level falls to {} at the lowest and the pump keeps its water.",
    "Un día de este sitio: el nivel más hondo al que baja el agua es {}, y la bomba conserva su agua.",
  ],
  [
    "The site's own day: the level falls to {} at the lowest; in {} of {} draws the pump loses its water on it.",
    "Un día de este sitio: el nivel más hondo al que baja el agua es {}; en {} de {} sorteos la bomba se queda ese día sin agua.",
  ],
  [
    "A tank that the well fills evenly day and night would have to hold {} to even that out.",
    "Para compensarlo, un tanque que el pozo llene parejo de día y de noche tendría que guardar {}.",
  ],
];

/// Los escenarios, por su título.
const titles: Forms = Object.entries(scenarios).map(([key, title]) => [key, `«${title}»`] as const);

export const forms: Forms = [...criteria, ...worst, ...verdict, ...margins, ...measuring, ...outlook, ...titles, ...visit];
