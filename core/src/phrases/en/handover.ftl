# handover: every key starts with handover-.
