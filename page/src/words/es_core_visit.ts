// Lo que el núcleo dice en la hoja de la visita y al ajustar el modelo a las lecturas.
import type { Forms } from "./translated";

/// Antes de dar tensión.
const before: Forms = [
  ["Tank precharge", "Precarga del tanque"],
  ["Line open to the air, tank empty, gauge on its air valve: {} ({}).", "Línea abierta al aire, tanque vacío, manómetro en su válvula de aire: {} ({})."],
  ["as the site file says", "como dice el archivo del sitio"],
  ["{} under cut-in, common practice", "{} debajo de la presión de arranque, práctica común"],
  ["about {} of the target, common practice, no source", "cerca de {} de la presión a mantener, práctica común, sin fuente"],
  ["Cable", "Cable"],
  [
    "{}, {} from drive to motor: drops up to {} % of the motor's volts at {} ({}).",
    "{}, {} del variador al motor: pierde hasta {} % de la tensión del motor con {} ({}).",
  ],
  ["{} conductors", "conductores de {}"],
  ["MORE than the usual {} %: take a thicker one", "MÁS que el {} % usual: ponga uno más grueso"],
  ["{} % is the usual limit", "{} % es el límite usual"],
  ["Insulation", "Aislamiento"],
  [
    "Leads off the drive, {} megohmmeter, each lead to earth for a minute: at least {} MΩ with the cable in the well (IEEE 43, at {}).",
    "Cables desconectados del variador, megóhmetro de {}, cada cable contra tierra durante un minuto: al menos {} MΩ con el cable en el pozo (IEEE 43, a {}).",
  ],
  ["Never through the drive.", "Nunca a través del variador."],
  ["Current limit", "Límite de corriente"],
  ["Motor's label against the value entered below, {}.", "La placa del motor contra el valor que se pone abajo, {}."],
  // Valores que se eligen, y claves con lo que queda sin guarda.
  ["closes on stop", "cierra al parar"],
  ["opens on stop", "abre al parar"],
  ["closed runs", "cerrado deja correr"],
  ["open runs", "abierto deja correr"],
];

/// Las pruebas y sus pasos.
const steps: Forms = [
  ["Before the first start", "Antes del primer arranque"],
  ["Rotation, and the shut line by hand", "Sentido de giro, y la línea cerrada en manual"],
  ["From cut-out to cut-in and back", "De la presión de paro a la de arranque y de vuelta"],
  ["Leak check, all shut", "Prueba de fuga, todo cerrado"],
  ["Line shut between pump and sensor", "La línea cerrada entre bomba y sensor"],
  ["Small draw", "Consumo pequeño"],
  ["Full draw", "Consumo pleno"],
  ["Sleep and wake", "Dormir y despertar"],
  ["Low-water stop, without drawing the well down", "Paro por falta de agua, sin abatir el pozo"],
  [
    "Pump off since an hour, line open to the air, drive powered and not running.",
    "Bomba parada desde hace una hora, línea abierta al aire, variador con tensión y sin correr.",
  ],
  [
    "If the supply has three lines, the three readings differ from their mean by no more than {} % (NEMA MG 1).",
    "Si la red llega en tres líneas, las tres lecturas no se apartan de su promedio más de {} % (NEMA MG 1).",
  ],
  ["Pump off since an hour.", "Bomba parada desde hace una hora."],
  ["Sound the well; read the volts between lines.", "Sondee el pozo; lea la tensión entre líneas."],
  [
    "No more than {} in the tank, every tap shut: run by hand at {} for {}, read at its end, stop.",
    "No más de {} en el tanque y todas las llaves cerradas: corra la bomba en manual a {} durante {}, lea al final y párela.",
  ],
  [
    "Not above {}: it turns backwards. Lock out, swap two motor leads.",
    "Si no pasa de {}, gira al revés: abra el desconectador, póngale candado y etiqueta, e intercambie dos cables del motor.",
  ],
  [
    "Lock out, swap two motor leads, repeat: the way with more pressure is right.",
    "Abra el desconectador, póngale candado y etiqueta, intercambie dos cables del motor y repita: el sentido con más presión es el correcto.",
  ],
  [
    "Let the pump fill the tank until it stops. Open one tap into marked buckets until it starts, shut the tap at once, and take the time until it stops.",
    "Deje que la bomba llene el tanque hasta que pare. Abra una llave sobre cubetas graduadas hasta que arranque, cierre la llave enseguida y tome el tiempo hasta que pare.",
  ],
  ["Tank at its pressure, every tap shut, disconnect open.", "Tanque con su presión, todas las llaves cerradas, desconectador abierto."],
  ["Read the gauge, wait {}, read again.", "Lea el manómetro, espere {} y lea otra vez."],
  [
    "More: a leak in the house; or, if it falls with the house valve shut too, past the check valve.",
    "Si cae más: una fuga en la casa; o, si cae también con la válvula de la casa cerrada, por la válvula de retención.",
  ],
  ["Only with a valve between the well head and the tank.", "Solo si hay una válvula entre la boca del pozo y el tanque."],
  [
    "Taps open as marked: shut that valve in about {} and take the time from then until the drive stops by itself.",
    "Llaves abiertas como se marcaron: cierre esa válvula en unos {} y tome el tiempo desde ese momento hasta que el variador pare solo.",
  ],
  ["If it has not stopped after {}, stop it by hand.", "Si a los {} no ha parado, párelo a mano."],
  ["Open the valve, reset.", "Abra la válvula y restablezca."],
  ["Open a tap until a {} fills in {} ({}).", "Abra una llave hasta que llene una {} en {} ({})."],
  ["{} qt jug", "jarra de {} qt"],
  ["{} jug", "jarra de {}"],
  ["{} bucket", "cubeta de {}"],
  [
    "Either the pump still turns after {}, and steadily, or the tank feeds this draw in spells: read what applies.",
    "O la bomba sigue girando a los {}, y pareja, o el tanque surte este consumo por ratos: lea lo que corresponda.",
  ],
  ["After {} the pump still turns, and steadily.", "A los {} la bomba sigue girando, y pareja."],
  ["The pump sleeps and wakes: the tank feeds this draw in spells.", "La bomba duerme y despierta: el tanque surte este consumo por ratos."],
  [
    "Open taps near the tank until the drive shows {}; mark how far they stand open.",
    "Abra llaves cerca del tanque hasta que el variador muestre {}; marque qué tan abiertas quedan.",
  ],
  [
    "Open taps near the tank until the gauge holds {} and the pump runs on; mark how far they stand open.",
    "Abra llaves cerca del tanque hasta que el manómetro se quede en {} y la bomba siga en marcha; marque qué tan abiertas quedan.",
  ],
  ["After {} read.", "Lea a los {}."],
  [
    "Time a {} under all of it (two buckets at two taps: half the time counts).",
    "Tome el tiempo en que todo ese caudal llena una {} (con dos cubetas en dos llaves cuenta la mitad del tiempo).",
  ],
  [
    "Shut all taps and take the time until the pump is off. Five minutes later open a tap into a marked bucket, and shut it when the pump starts.",
    "Cierre todas las llaves y tome el tiempo hasta que la bomba pare. Cinco minutos después abra una llave sobre una cubeta graduada, y ciérrela cuando la bomba arranque.",
  ],
  ["Only with a guard that watches the amperes.", "Solo con una guarda que vigila la corriente."],
  ["Pump off: set {} to {} times the {} of the full draw (about {}).", "Bomba parada: ponga {} en {} veces la {} del consumo pleno (unos {})."],
  [
    "Pump asleep, taps shut: set {} to {}, and {} to {} times the {} of the full draw (about {}).",
    "Bomba dormida, llaves cerradas: ponga {} en {}, y {} en {} veces la {} del consumo pleno (unos {}).",
  ],
  ["amperes", "corriente"],
  ["input power", "potencia de entrada"],
  ["Open the taps as marked; take the time from start to stop.", "Abra las llaves como se marcaron; tome el tiempo del arranque al paro."],
  [
    "Open the taps as marked; take the time from start to stop for dry run.",
    "Abra las llaves como se marcaron; tome el tiempo del arranque al paro por marcha en seco.",
  ],
  ["Not within {}: it does not work.", "Si no para en {}, la guarda no funciona."],
  ["{} back to {}", "{} de vuelta a {}"],
  ["both read again on the display, the stop reset", "los dos leídos otra vez en la pantalla, y el paro restablecido"],
  ["read again, the stop reset", "leído otra vez, y el paro restablecido"],
  [
    "Not to be done here: against a shut valve the pump could bring more than its class to a pipe.",
    "No se hace aquí: contra una válvula cerrada la bomba podría llevar un tubo más allá de lo que aguanta.",
  ],
  [
    "Not to be done here: at no speed that tells anything is the shut line safe in every draw.",
    "No se hace aquí: a ninguna velocidad que diga algo es segura la línea cerrada en todos los sorteos.",
  ],
  [
    "Watch the full draw instead: turned backwards the pump does not come near it.",
    "Fíjese en su lugar en el consumo pleno: girando al revés la bomba ni se le acerca.",
  ],
  [
    "Not to be done here: in most draws the guard would not act in this test. See the plan for what stops the pump instead.",
    "No se hace aquí: en la mayoría de los sorteos la guarda no actuaría en esta prueba. Vea en el plan qué para la bomba en su lugar.",
  ],
  ["Not to be done here: in most draws there is nothing steady to read.", "No se hace aquí: en la mayoría de los sorteos no hay nada estable que leer."],
  // Las lecturas, con qué se toman y su banda.
  ["Water level", "Nivel del agua"],
  ["Supply", "Tensión de la red"],
  ["Pressure, line open to the air", "Presión, línea abierta al aire"],
  ["Current", "Corriente"],
  ["Input power", "Potencia de entrada"],
  ["Fall of pressure", "Caída de presión"],
  ["Swing of pressure in a minute", "Oscilación de la presión en un minuto"],
  ["Speed", "Velocidad"],
  ["Time from start to start", "Tiempo de un arranque al siguiente"],
  ["Time to fill the bucket", "Tiempo para llenar la cubeta"],
  ["Time until the pump is off", "Tiempo hasta que la bomba para"],
  ["Pressure as it starts", "Presión al arrancar"],
  ["Water until it starts", "Agua hasta que arranca"],
  ["Time until it stops", "Tiempo hasta que para"],
  ["Current just before", "Corriente justo antes"],
  ["Time from start to stop", "Tiempo del arranque al paro"],
  ["Pressure as the pump starts", "Presión al arrancar la bomba"],
  ["Pressure as it stops", "Presión al parar"],
  ["Water from stop to start", "Agua del paro al arranque"],
  ["Current just before it stops", "Corriente justo antes de parar"],
  ["{} (in {} of {} draws)", "{} (en {} de {} sorteos)"],
  ["drive's display", "pantalla del variador"],
  ["clamp meter, one motor lead", "pinza amperimétrica, un cable del motor"],
  ["gauge at the tank", "manómetro en el tanque"],
  ["gauge at the tank, twice", "manómetro en el tanque, dos veces"],
  ["voltmeter, line to line", "voltímetro, entre líneas"],
  ["tape or sounder", "cinta o sonda"],
  ["watch", "reloj"],
  ["bucket and watch", "cubeta y reloj"],
  ["marked bucket", "cubeta graduada"],
  ["at most {}", "{} como máximo"],
  [
    "Bands: {} draws of what is not known of the site, each test simulated on each, meters erring as they do (common practice).",
    "Intervalos: {} sorteos de lo que no se sabe del sitio, cada prueba simulada en cada uno, con los instrumentos errando como suelen (práctica común).",
  ],
  [
    "Of such sites {} % read inside a band ({} % at the least, with 95 % confidence), and about {} % inside all of them.",
    "De los sitios como este, {} % leen dentro de un intervalo ({} % como mínimo, con 95 % de confianza), y cerca de {} % dentro de todos.",
  ],
  [
    "Outside: read again; outside still: note it, and let the command fit say what would explain it before anybody relies on the pump.",
    "Si queda fuera, lea otra vez; si sigue fuera, anótelo y deje que la orden fit diga qué lo explicaría antes de que alguien confíe en la bomba.",
  ],
];

/// Los ajustes frente al sitio más afinado, y el sensor.
const fit: Forms = [
  ["The settings given", "Los ajustes dados"],
  ["The settings derived from the site as it was described", "Los ajustes calculados del sitio como se describió"],
  ["{}, as {} takes them,", "{}, como los toma {},"],
  [
    "{} pass all {} runs in {} scenarios over {} draws of the narrower site.",
    "{} aguantan en las {} corridas, en {} escenarios y sobre {} sorteos del sitio más afinado.",
  ],
  ["{} fail on the narrower site in {}.", "{} fallan en el sitio más afinado en {}."],
  ["{} ({} of {})", "{} ({} de {})"],
  [
    "Each of these failed on the site as it was described too: nothing that was read has brought it about.",
    "Cada uno de estos fallaba también en el sitio como se describió: no lo ha causado nada de lo leído.",
  ],
  ["On the site as it was described they held there.", "En el sitio como se describió ahí aguantaban."],
  [
    "The readings bring {}; the rest failed on the site as it was described too.",
    "Las lecturas traen {}; lo demás fallaba también en el sitio como se describió.",
  ],
  [
    "{} is beyond what the site file says of it: set it there as found, or wider, and fit again.",
    "{} queda fuera de lo que dice el archivo del sitio: póngalo ahí como se encontró, o más amplio, y ajuste el modelo otra vez.",
  ],
  ...(["little", "much"] as const).flatMap((side): Forms => {
    const off = side === "little" ? "de menos" : "de más";
    return [
      [
        `{} pairs of gauge and drive were read: at {} the drive shows {} too ${side} (± {} with 95 %).`,
        `Se leyeron {} pares de manómetro y variador: a {} el variador muestra {} ${off} (± {} con 95 %).`,
      ],
      [
        `One pair of gauge and drive was read: at {} the drive shows {} too ${side} (± {} with 95 %).`,
        `Se leyó un par de manómetro y variador: a {} el variador muestra {} ${off} (± {} con 95 %).`,
      ],
    ];
  }),
  [
    "That is within the error of the readings: the trim stays as it is.",
    "Eso está dentro del error de las lecturas: lo que se suma a la lectura del sensor queda como está.",
  ],
  [
    "{} has no trim: what it holds stays off by that, and {} has to stand so much lower than the pressure wanted.",
    "{} no puede corregir el sensor: lo que mantiene queda desviado en eso, y {} tiene que quedar tanto así por debajo de la presión deseada.",
  ],
  [
    "{} has no trim: what it holds stays off by that, and {} has to stand so much higher than the pressure wanted.",
    "{} no puede corregir el sensor: lo que mantiene queda desviado en eso, y {} tiene que quedar tanto así por arriba de la presión deseada.",
  ],
  ["Settings derived anew allow for it.", "Los ajustes calculados de nuevo lo toman en cuenta."],
  ["{} stays: none of the drive's values is nearer.", "{} se queda: ningún valor del variador está más cerca."],
  ["Set {} to {} in place of {}.", "Ponga {} en {} en lugar de {}."],
  ["{} ({})", "{} ({})"],
  [
    "The readings of gauge and drive speak of nothing but the sensor, so it is taken for the cause; a gauge that errs by so much would look alike.",
    "Las lecturas de manómetro y variador solo hablan del sensor, así que se toma como la causa; un manómetro que errara tanto se vería igual.",
  ],
  [
    "Its span is off by {} % (± {} %), which no trim mends: at other pressures it errs otherwise.",
    "Su alcance está desviado {} % (± {} %), y eso no lo remedia ninguna corrección: a otras presiones yerra de otra manera.",
  ],
  ["A second pair at another pressure would tell the span too.", "Un segundo par a otra presión diría también si falla el alcance."],
];

/// Las lecturas que no concuerdan, y qué lo explicaría: sigue a «si».
const misfits: Forms = [
  ["{}: {} was read as {}, and the others foretell {} ({} of its sigmas off).", "{}: {} se leyó como {}, y las demás lecturas predicen {} (difiere en {} de sus sigmas)."],
  ["{}: {} was read as {}, and the others foretell {} ({} of its sigmas off){}.", "{}: {} se leyó como {}, y las demás lecturas predicen {} (difiere en {} de sus sigmas){}."],
  ["; or it is {} of the same reading", "; o lo que está mal es {} de la misma lectura"],
  ["; or it is {} of the same reading{}", "; o lo que está mal es {} de la misma lectura{}"],
  ["Reading {} (rest)", "Lectura {} (bomba parada)"],
  ["Reading {} (asleep)", "Lectura {} (dormido)"],
  ["Reading {} (shut)", "Lectura {} (línea cerrada)"],
  ["Reading {} (least)", "Lectura {} (consumo mínimo)"],
  ["Reading {} (open)", "Lectura {} (cerca del consumo máximo)"],
  ["Reading {} (flow)", "Lectura {} (algún consumo)"],
  ["the gauge", "el manómetro"],
  ["the drive's pressure", "la presión del variador"],
  ["the speed", "la velocidad"],
  ["the current", "la corriente"],
  ["the supply's volts", "la tensión de la red"],
  ["the flow", "el caudal"],
  ["the water level", "el nivel del agua"],
  ["the gauge after the wait", "el manómetro después de la espera"],
  [
    "No quantity of the site explains it without contradicting other readings: read it again.",
    "Ninguna cantidad del sitio lo explica sin contradecir otras lecturas: léala otra vez.",
  ],
  ["It would fit if {} ({} about {}, beyond what the site file says).", "Concordaría si {} ({} cerca de {}, fuera de lo que dice el archivo del sitio)."],
  ["the pump is worn: water slips back inside it", "la bomba estuviera gastada: el agua se regresa por dentro"],
  ["the pump takes more power than its curve: sand, a dragging bearing, another pump", "la bomba pidiera más potencia que su curva: arena, un cojinete que frena, otra bomba"],
  [
    "the pump takes less power than its curve: another pump, or some of its stages turn idle",
    "la bomba pidiera menos potencia que su curva: otra bomba, o algunas etapas giran sin trabajar",
  ],
  ["the pump gives more head than its curve: another pump", "la bomba diera más carga que su curva: otra bomba"],
  ["the pump gives less head than its curve: another pump, or a clogged stage", "la bomba diera menos carga que su curva: otra bomba, o una etapa tapada"],
  ["the water stands deeper than the site file says", "el agua estuviera más honda de lo que dice el archivo del sitio"],
  ["the water stands higher than the site file says", "el agua estuviera más arriba de lo que dice el archivo del sitio"],
  ["the well gives less than its test says", "el pozo diera menos de lo que dice su prueba"],
  ["the well gives more than its test says", "el pozo diera más de lo que dice su prueba"],
  ["the well gives more than the site file says", "el pozo diera más de lo que dice el archivo del sitio"],
  ["the well gives less than the site file says", "el pozo diera menos de lo que dice el archivo del sitio"],
  ["the formation gives more than the site file says", "la formación diera más de lo que dice el archivo del sitio"],
  ["the formation gives less than the site file says", "la formación diera menos de lo que dice el archivo del sitio"],
  [
    "something throttles the pipe: a valve half shut, a clogged filter, scale",
    "algo estrangulara el tubo: una válvula a medio cerrar, un filtro tapado, sarro",
  ],
  ["the tank stands higher than the site file says", "el tanque estuviera más alto de lo que dice el archivo del sitio"],
  ["the tank stands lower than the site file says", "el tanque estuviera más bajo de lo que dice el archivo del sitio"],
  ["the supply gives more volts than said", "la red diera más tensión de la que se dijo"],
  ["the supply gives fewer volts than said", "la red diera menos tensión de la que se dijo"],
  ["the sensor reads too much at no pressure", "el sensor leyera de más sin presión"],
  ["the sensor reads too little at no pressure", "el sensor leyera de menos sin presión"],
  ["more leaks with all taps shut than said", "con todas las llaves cerradas se fugara más de lo que se dijo"],
  ["the tank is charged higher than said", "el tanque tuviera más carga de gas de la que se dijo"],
  ["the tank has lost charge", "el tanque hubiera perdido su carga"],
  [
    "the motor takes more current idle than its plate lets expect: a winding or another motor",
    "el motor tomara en vacío más corriente de la que hace esperar su placa: un devanado, u otro motor",
  ],
  [
    "the motor takes less current idle than its plate lets expect: another motor",
    "el motor tomara en vacío menos corriente de la que hace esperar su placa: otro motor",
  ],
  [
    "the motor takes more current than its plate says: a winding or another motor",
    "el motor tomara más corriente de la que dice su placa: un devanado, u otro motor",
  ],
  ["the motor takes less current than its plate says: another motor", "el motor tomara menos corriente de la que dice su placa: otro motor"],
  ["the cable is longer or has a bad joint", "el cable fuera más largo o tuviera un mal empalme"],
];

/// Nombres y rótulos de las fichas de ejemplo: quedan como los muestra el variador.
const shown: Forms = [
  "Plain bench drive", "Watt-minding bench drive", "House pressure", "Fastest", "No-water amps",
  "Wanted", "Probe correction", "High end", "Empty under", "closed in trouble", "made on alarm",
].map((label) => [label, label] as const);

export const forms: Forms = [...before, ...steps, ...fit, ...misfits, ...shown];
