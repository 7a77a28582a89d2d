# handover: cada clave empieza por handover-.
